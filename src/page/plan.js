// What runs in a published plan: the choice of units and the turntable. A classic script with nothing around it; it asks for
// nothing from outside. Without WebGL the still picture beside it stays, and the turntable is not shown.

/**
 * @typedef {{ name: string, colour: [number, number, number], positions: string, triangles: string, edges: string }} PackedPart
 *   Positions: 16-bit signed, three a corner, in units of `step` mm. Triangles and edges: 32-bit indices. All base64, little-endian.
 * @typedef {{ label: string, items: { part: number, move: [number, number, number] }[] }} Arrangement
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
   * @param {HTMLElement} host
   * @param {Turntable} stove
   */
  function turntable(host, stove) {
    const canvas = document.createElement('canvas')
    const gl = canvas.getContext('webgl2', { antialias: true, alpha: false })
    if (gl === null) return
    host.hidden = false

    const VERTEX = `#version 300 es
      in vec3 at; uniform mat4 view; uniform mat4 lens; out vec3 place;
      void main() { vec4 seen = view * vec4(at, 1.0); place = seen.xyz; gl_Position = lens * seen; }`
    const FRAGMENT = `#version 300 es
      precision highp float;
      in vec3 place; uniform vec3 colour; uniform float lit; out vec4 drawn;
      void main() {
        vec3 normal = normalize(cross(dFdx(place), dFdy(place)));
        float light = 0.52 + 0.34 * abs(dot(normal, normalize(vec3(0.35, 0.5, 0.8)))) + 0.14 * max(normal.y, 0.0);
        drawn = vec4(mix(colour, colour * light, lit), 1.0);
      }`
    /**
     * @param {number} kind
     * @param {string} source
     */
    const shader = (kind, source) => {
      const one = /** @type {WebGLShader} */ (gl.createShader(kind))
      gl.shaderSource(one, source)
      gl.compileShader(one)
      return one
    }
    const program = /** @type {WebGLProgram} */ (gl.createProgram())
    gl.attachShader(program, shader(gl.VERTEX_SHADER, VERTEX))
    gl.attachShader(program, shader(gl.FRAGMENT_SHADER, FRAGMENT))
    gl.linkProgram(program)
    if (!gl.getProgramParameter(program, gl.LINK_STATUS)) {
      host.hidden = true
      return
    }
    const at = gl.getAttribLocation(program, 'at')
    const [view, lens, colour, lit] = ['view', 'lens', 'colour', 'lit'].map((name) =>
      gl.getUniformLocation(program, name),
    )

    const parts = stove.parts.map((part) => {
      const corners = new Float32Array(new Int16Array(bytesOf(part.positions))).map((n) => n * stove.step)
      const triangles = new Uint32Array(bytesOf(part.triangles))
      const edges = new Uint32Array(bytesOf(part.edges))
      /**
       * @param {number} target
       * @param {BufferSource} what
       */
      const buffer = (target, what) => {
        const one = gl.createBuffer()
        gl.bindBuffer(target, one)
        gl.bufferData(target, what, gl.STATIC_DRAW)
        return one
      }
      const whole = gl.createVertexArray()
      gl.bindVertexArray(whole)
      buffer(gl.ARRAY_BUFFER, corners)
      gl.enableVertexAttribArray(at)
      gl.vertexAttribPointer(at, 3, gl.FLOAT, false, 0, 0)
      const faces = buffer(gl.ELEMENT_ARRAY_BUFFER, triangles)
      const lines = buffer(gl.ELEMENT_ARRAY_BUFFER, edges)
      return { ...part, corners, whole, faces, lines, triangles: triangles.length, edges: edges.length }
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
      return { middle: (low + high) / 2, radius: Math.hypot((high - low) / 2, wide) }
    }

    let shown = /** @type {Arrangement} */ (stove.arrangements[0])
    let extent = extentOf(shown)
    let [turn, tilt] = [-0.6, 0.42]
    let turning = !matchMedia('(prefers-reduced-motion: reduce)').matches
    let asked = false

    const draw = () => {
      asked = false
      const { clientWidth, clientHeight } = canvas
      const ratio = Math.min(devicePixelRatio, 2)
      const [width, height] = [Math.round(clientWidth * ratio), Math.round(clientHeight * ratio)]
      if (width === 0 || height === 0) return
      if (canvas.width !== width || canvas.height !== height) [canvas.width, canvas.height] = [width, height]
      gl.viewport(0, 0, width, height)
      gl.clearColor(0.98, 0.965, 0.933, 1)
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT)
      gl.enable(gl.DEPTH_TEST)
      gl.useProgram(program)
      // Far enough away that uprights stay nearly upright.
      const away = extent.radius * 5
      const reach = 1 / Math.tan(0.225)
      const fit = Math.min(1, width / height)
      const [near, far] = [away - extent.radius * 1.1, away + extent.radius * 1.1]
      gl.uniformMatrix4fv(lens ?? null, false, [
        (reach * fit * height) / width,
        0,
        0,
        0,
        0,
        reach * fit,
        0,
        0,
        0,
        0,
        (near + far) / (near - far),
        -1,
        0,
        0,
        (2 * near * far) / (near - far),
        0,
      ])
      const [c, s, ct, st] = [Math.cos(turn), Math.sin(turn), Math.cos(tilt), Math.sin(tilt)]
      for (const { part: index, move } of shown.items) {
        const part = /** @type {typeof parts[number]} */ (parts[index])
        const [x, y, z] = [move[0], move[1], move[2] - extent.middle]
        // Stove axis z becomes up; turned about it, then tilted towards the eye.
        const [mx, my, mz] = [c * x - s * y, s * x + c * y, z]
        gl.uniformMatrix4fv(view ?? null, false, [
          c,
          st * s,
          -ct * s,
          0,
          -s,
          st * c,
          -ct * c,
          0,
          0,
          ct,
          st,
          0,
          mx,
          st * my + ct * mz,
          -ct * my + st * mz - away,
          1,
        ])
        gl.bindVertexArray(part.whole)
        gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, part.faces)
        gl.enable(gl.POLYGON_OFFSET_FILL)
        gl.polygonOffset(1, 2)
        gl.uniform1f(lit ?? null, 1)
        gl.uniform3fv(colour ?? null, part.colour)
        gl.drawElements(gl.TRIANGLES, part.triangles, gl.UNSIGNED_INT, 0)
        gl.disable(gl.POLYGON_OFFSET_FILL)
        gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, part.lines)
        gl.uniform1f(lit ?? null, 0)
        gl.uniform3fv(colour ?? null, [0.14, 0.12, 0.1])
        gl.drawElements(gl.LINES, part.edges, gl.UNSIGNED_INT, 0)
      }
    }
    const ask = () => {
      if (asked) return
      asked = true
      requestAnimationFrame(draw)
    }
    /** @param {number} [last] */
    const go = (last) => {
      if (!turning) return
      requestAnimationFrame((now) => {
        if (!turning) return
        turn += last === undefined ? 0 : Math.min(now - last, 100) * 0.00025
        draw()
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
        for (const other of buttons.children) other.setAttribute('aria-pressed', String(other === button))
        ask()
      })
      buttons.append(button)
    }
    host.append(buttons, canvas)
    ask()
    go()
  }
})()
