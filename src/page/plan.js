// What runs in a published plan: the choice of units and the turntable. A classic script with nothing around it; it asks for
// nothing from outside. The turntable is painted here, point by point: a few thousand triangles need no graphics card, and every
// browser paints the same.

/**
 * @typedef {{ name: string, colour: [number, number, number], positions: string, triangles: string, edges: string }} PackedPart
 *   Positions: 16-bit signed, three a corner, in units of `step` mm. Triangles and edges: 32-bit indices. All base64, little-endian.
 * @typedef {{ label: string, seenFrom?: number, items: { part: number, move: [number, number, number] }[] }} Arrangement
 *   `seenFrom`: bearing it has to be seen from, in degrees.
 * @typedef {{ step: number, parts: PackedPart[], arrangements: Arrangement[] }} Turntable
 */

;(() => {
  const data = JSON.parse(document.getElementById('plan-data')?.textContent ?? '{}')

  const radios = /** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll('input[name=units]'))
  /** @param {string} units */
  const choose = (units) => {
    document.documentElement.dataset.units = units
  }
  for (const radio of radios) {
    radio.addEventListener('change', () => choose(radio.value))
    // A browser may remember what was ticked before the page was loaded again.
    if (radio.checked) choose(radio.value)
  }

  const place = document.getElementById('turntable')
  if (place !== null && data.turntable !== undefined) turntable(place, data.turntable)

  /**
   * @param {string} text
   * @returns {ArrayBuffer}
   */
  function bytesOf(text) {
    const letters = atob(text)
    const bytes = new Uint8Array(letters.length)
    for (let i = 0; i < letters.length; i++) bytes[i] = letters.charCodeAt(i)
    return bytes.buffer
  }

  /**
   * Outward, of length one, three numbers a triangle.
   * @param {Float32Array} corners
   * @param {Uint32Array} triangles
   */
  function normalsOf(corners, triangles) {
    const normals = new Float32Array(triangles.length)
    for (let i = 0; i < triangles.length; i += 3) {
      const [p = 0, q = 0, r = 0] = triangles.subarray(i, i + 3)
      const [ax = 0, ay = 0, az = 0] = corners.subarray(p, p + 3)
      const [bx = 0, by = 0, bz = 0] = corners.subarray(q, q + 3)
      const [cx = 0, cy = 0, cz = 0] = corners.subarray(r, r + 3)
      const [ux, uy, uz] = [bx - ax, by - ay, bz - az]
      const [vx, vy, vz] = [cx - ax, cy - ay, cz - az]
      const normal = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
      const length = Math.hypot(...normal) || 1
      normals.set(
        normal.map((share) => share / length),
        i,
      )
    }
    return normals
  }

  /**
   * @param {HTMLElement} host
   * @param {Turntable} stove
   */
  function turntable(host, stove) {
    const canvas = document.createElement('canvas')
    const paper = canvas.getContext('2d', { alpha: false })
    const buffer = document.createElement('canvas')
    const sheet = buffer.getContext('2d', { alpha: false })
    if (paper === null || sheet === null) return
    host.hidden = false

    const parts = stove.parts.map((part) => {
      const corners = new Float32Array(new Int16Array(bytesOf(part.positions))).map((n) => n * stove.step)
      const triangles = new Uint32Array(bytesOf(part.triangles)).map((n) => 3 * n)
      const edges = new Uint32Array(bytesOf(part.edges)).map((n) => 3 * n)
      const seen = new Float32Array(corners.length)
      return { ...part, corners, triangles, edges, normals: normalsOf(corners, triangles), seen }
    })

    /** @param {Arrangement} arrangement */
    const extentOf = ({ items }) => {
      let [low, high, wide] = [Infinity, -Infinity, 0]
      for (const { part, move } of items) {
        const { corners } = /** @type {typeof parts[number]} */ (parts[part])
        for (let i = 0; i < corners.length; i += 3) {
          const [x = 0, y = 0, z = 0] = [0, 1, 2].map((k) => (corners[i + k] ?? 0) + (move[k] ?? 0))
          low = Math.min(low, z)
          high = Math.max(high, z)
          wide = Math.max(wide, Math.hypot(x, y))
        }
      }
      return { middle: (low + high) / 2, wide, radius: Math.hypot((high - low) / 2, wide) }
    }

    let shown = /** @type {Arrangement} */ (stove.arrangements[0])
    let extent = extentOf(shown)
    /** @param {number} bearing of the beholder, in degrees from the stove's front */
    const turnTo = (bearing) => ((180 + bearing) * Math.PI) / 180
    let [turn, tilt] = [turnTo(28), 0.42]
    let turning = !matchMedia('(prefers-reduced-motion: reduce)').matches
    let inView = false

    const PAPER = 0xffeef6fa
    const EDGE = 0xff1a1f24
    /** Points painted for one of the page's, each way: what is at rest is smoothed. */
    const [FINE, QUICK] = [2, 1]
    /** A frame that turns may take so long [ms]. */
    const FRAME = 24

    let image = new ImageData(1, 1)
    let [across, down] = [1, 1]
    let points = new Uint32Array(image.data.buffer)
    /** Nearness of what is painted, the inverse of its distance. */
    let near = new Float32Array(1)

    /**
     * Corners `a`, `b`, `c` lie in `seen` as x, y, nearness. Points are painted where nothing nearer was.
     * @param {Float32Array} seen
     * @param {number} a
     * @param {number} b
     * @param {number} c
     * @param {number} ink
     */
    const paintTriangle = (seen, a, b, c, ink) => {
      // From the highest corner down.
      let [i, j, k] = [a, b, c]
      if (Number(seen[j + 1]) < Number(seen[i + 1])) [i, j] = [j, i]
      if (Number(seen[k + 1]) < Number(seen[j + 1])) [j, k] = [k, j]
      if (Number(seen[j + 1]) < Number(seen[i + 1])) [i, j] = [j, i]
      const [x0, y0, w0] = [Number(seen[i]), Number(seen[i + 1]), Number(seen[i + 2])]
      const [x1, y1, w1] = [Number(seen[j]), Number(seen[j + 1]), Number(seen[j + 2])]
      const [x2, y2, w2] = [Number(seen[k]), Number(seen[k + 1]), Number(seen[k + 2])]
      const start = Math.max(0, Math.ceil(y0 - 0.5))
      const end = Math.min(down - 1, Math.ceil(y2 - 0.5) - 1)
      if (end < start) return
      const area = (x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)
      const slope = ((w1 - w0) * (y2 - y0) - (w2 - w0) * (y1 - y0)) / area
      const fall = ((w2 - w0) * (x1 - x0) - (w1 - w0) * (x2 - x0)) / area
      const [long, upper, lower] = [(x2 - x0) / (y2 - y0), (x1 - x0) / (y1 - y0), (x2 - x1) / (y2 - y1)]
      for (let y = start; y <= end; y++) {
        const middle = y + 0.5
        const one = x0 + long * (middle - y0)
        const other = middle < y1 ? x0 + upper * (middle - y0) : x1 + lower * (middle - y1)
        const first = Math.max(0, Math.ceil(Math.min(one, other) - 0.5))
        const last = Math.min(across - 1, Math.ceil(Math.max(one, other) - 0.5) - 1)
        const row = y * across
        let w = w0 + slope * (first + 0.5 - x0) + fall * (middle - y0)
        for (let at = row + first; at <= row + last; at++) {
          if (w > Number(near[at])) {
            near[at] = w
            points[at] = ink
          }
          w += slope
        }
      }
    }

    /** An edge stands this much before the faces that meet in it. */
    const BEFORE = 1.0002

    /**
     * @param {Float32Array} seen
     * @param {number} a
     * @param {number} b
     */
    const paintEdge = (seen, a, b) => {
      const [x0, y0, w0] = [Number(seen[a]), Number(seen[a + 1]), Number(seen[a + 2]) * BEFORE]
      const [x1, y1, w1] = [Number(seen[b]), Number(seen[b + 1]), Number(seen[b + 2]) * BEFORE]
      const steps = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0))))
      for (let i = 0; i <= steps; i++) {
        const t = i / steps
        const x = Math.floor(x0 + (x1 - x0) * t)
        const y = Math.floor(y0 + (y1 - y0) * t)
        if (x < 0 || y < 0 || x >= across || y >= down) continue
        const at = y * across + x
        if (w0 + (w1 - w0) * t > Number(near[at])) points[at] = EDGE
      }
    }

    /** @param {number} fineness */
    const paint = (fineness) => {
      const { clientWidth, clientHeight } = canvas
      const [width, height] = [Math.round(clientWidth * fineness), Math.round(clientHeight * fineness)]
      if (width === 0 || height === 0) return
      if (across !== width || down !== height) {
        ;[across, down] = [width, height]
        image = new ImageData(width, height)
        points = new Uint32Array(image.data.buffer)
        near = new Float32Array(width * height)
        ;[buffer.width, buffer.height] = [width, height]
      }
      points.fill(PAPER)
      near.fill(0)
      // Far enough away that uprights stay nearly upright.
      const away = extent.radius * 5
      const reach =
        (Math.min(height, (0.9 * width * extent.radius) / extent.wide) / 2) * (1 / Math.tan(0.225))
      const [c, s, ct, st] = [Math.cos(turn), Math.sin(turn), Math.cos(tilt), Math.sin(tilt)]
      for (const { part: index, move } of shown.items) {
        const { corners, triangles, normals, colour, seen } = /** @type {typeof parts[number]} */ (
          parts[index]
        )
        const [mx, my, mz] = [move[0], move[1], move[2] - extent.middle]
        for (let i = 0; i < corners.length; i += 3) {
          const [x, y, z] = [
            Number(corners[i]) + mx,
            Number(corners[i + 1]) + my,
            Number(corners[i + 2]) + mz,
          ]
          // Stove axis z becomes up; turned about it, then tilted towards the eye.
          const back = s * x + c * y
          const distance = away + ct * back - st * z
          seen[i] = width / 2 + (reach * (c * x - s * y)) / distance
          seen[i + 1] = height / 2 - (reach * (st * back + ct * z)) / distance
          seen[i + 2] = 1 / distance
        }
        for (let i = 0; i < triangles.length; i += 3) {
          const [p, q, r] = [Number(triangles[i]), Number(triangles[i + 1]), Number(triangles[i + 2])]
          const [x, y] = [Number(seen[p]), Number(seen[p + 1])]
          const turnedAway =
            (Number(seen[q]) - x) * (Number(seen[r + 1]) - y) -
            (Number(seen[r]) - x) * (Number(seen[q + 1]) - y)
          // Faces that look away lie behind others: solids are closed.
          if (turnedAway >= 0) continue
          const [nx, ny, nz] = [Number(normals[i]), Number(normals[i + 1]), Number(normals[i + 2])]
          const back = s * nx + c * ny
          const up = st * back + ct * nz
          // Light falls over the beholder's right shoulder.
          const facing = Math.abs(0.348 * (c * nx - s * ny) + 0.497 * up + 0.795 * (st * nz - ct * back))
          const light = 255 * Math.min(1, 0.52 + 0.34 * facing + 0.14 * Math.max(up, 0))
          const ink =
            0xff000000 + ((light * colour[2]) << 16) + ((light * colour[1]) << 8) + ((light * colour[0]) | 0)
          paintTriangle(seen, p, q, r, ink)
        }
      }
      for (const { part: index } of shown.items) {
        const { edges, seen } = /** @type {typeof parts[number]} */ (parts[index])
        for (let i = 0; i < edges.length; i += 2) paintEdge(seen, Number(edges[i]), Number(edges[i + 1]))
      }
      const ratio = Math.min(devicePixelRatio, FINE)
      const [wide, tall] = [Math.round(clientWidth * ratio), Math.round(clientHeight * ratio)]
      if (canvas.width !== wide || canvas.height !== tall) [canvas.width, canvas.height] = [wide, tall]
      sheet.putImageData(image, 0, 0)
      paper.drawImage(buffer, 0, 0, wide, tall)
    }

    /** What the coarsest picture takes, over the last few [ms]. */
    let took = Infinity
    let asked = false
    /** What was moved is painted quickly where it must be, then finely once it rests. */
    let rest = 0
    const ask = () => {
      clearTimeout(rest)
      if (asked) return
      asked = true
      requestAnimationFrame(() => {
        asked = false
        moving()
        if (!turning) rest = setTimeout(() => paint(FINE), 120)
      })
    }
    const moving = () => {
      const began = performance.now()
      const fineness = took * FINE ** 2 < FRAME ? FINE : QUICK
      paint(fineness)
      const now = (performance.now() - began) / fineness ** 2
      took = took === Infinity ? now : 0.9 * took + 0.1 * now
    }
    /** @param {number} [last] */
    const go = (last) => {
      requestAnimationFrame((now) => {
        if (!turning || !inView) return
        turn += last === undefined ? 0 : Math.min(now - last, 100) * 0.00025
        moving()
        go(now)
      })
    }

    /** @type {{ x: number, y: number } | null} */
    let held = null
    canvas.addEventListener('pointerdown', (event) => {
      turning = false
      held = { x: event.clientX, y: event.clientY }
      canvas.setPointerCapture(event.pointerId)
    })
    canvas.addEventListener('pointermove', (event) => {
      if (held === null) return
      turn += (event.clientX - held.x) * 0.01
      tilt = Math.max(-0.2, Math.min(1.5, tilt + (event.clientY - held.y) * 0.008))
      held = { x: event.clientX, y: event.clientY }
      ask()
    })
    for (const end of ['pointerup', 'pointercancel'])
      canvas.addEventListener(end, () => {
        held = null
      })
    canvas.addEventListener('keydown', (event) => {
      const step = { ArrowLeft: [-0.12, 0], ArrowRight: [0.12, 0], ArrowUp: [0, 0.1], ArrowDown: [0, -0.1] }[
        event.key
      ]
      if (step === undefined) return
      event.preventDefault()
      turning = false
      turn += step[0] ?? 0
      tilt = Math.max(-0.2, Math.min(1.5, tilt + (step[1] ?? 0)))
      ask()
    })
    new ResizeObserver(ask).observe(canvas)
    // It turns only where it is seen.
    new IntersectionObserver((entries) => {
      const was = inView
      inView = entries.at(-1)?.isIntersecting ?? false
      if (inView && !was) go()
    }).observe(canvas)

    canvas.tabIndex = 0
    canvas.setAttribute('role', 'application')
    canvas.setAttribute('aria-label', 'The stove in space: drag it, or turn it with the arrow keys')
    const buttons = document.createElement('div')
    buttons.className = 'turn'
    buttons.setAttribute('role', 'group')
    buttons.setAttribute('aria-label', 'How the stove is shown')
    for (const arrangement of stove.arrangements) {
      const button = document.createElement('button')
      button.type = 'button'
      button.textContent = arrangement.label
      button.setAttribute('aria-pressed', String(arrangement === shown))
      button.addEventListener('click', () => {
        shown = arrangement
        extent = extentOf(shown)
        // What is cut open shows its inside.
        if (shown.seenFrom !== undefined) turn = turnTo(shown.seenFrom)
        for (const other of buttons.children) other.setAttribute('aria-pressed', String(other === button))
        ask()
      })
      buttons.append(button)
    }
    host.append(buttons, canvas)
    ask()
  }
})()
