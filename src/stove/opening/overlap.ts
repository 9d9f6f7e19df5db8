import type { WallHole } from '#stove/model.ts'

/**
 * Exact overlap of two wall openings on the rolled-out wall: what a damper leaves free of a row of holes.
 *
 * An outline is a stack of strips without overlap, each bounded left and right by x = ±halfWidth (a rectangle) or by a
 * circle about (0, y). The overlap of two strips is ∫ max(0, min(right) − max(left)) dy; between the heights where two
 * of the four edges cross, the same two edges bound it, so every piece integrates in closed form.
 */
interface Strip {
  readonly bottom: number
  readonly top: number
  readonly edge:
    | { readonly kind: 'straight'; readonly halfWidth: number }
    | { readonly kind: 'circle'; readonly radius: number; readonly y: number }
}

const straight = (halfWidth: number, bottom: number, top: number): Strip => ({
  bottom,
  top,
  edge: { kind: 'straight', halfWidth },
})

const strips = (hole: WallHole): readonly Strip[] => {
  switch (hole.shape) {
    case 'round': {
      const radius = hole.diameter / 2
      return [{ bottom: -radius, top: radius, edge: { kind: 'circle', radius, y: 0 } }]
    }
    case 'slit': {
      const [width, height] = hole.along === 'axis' ? [hole.width, hole.length] : [hole.length, hole.width]
      return [straight(width / 2, -height / 2, height / 2)]
    }
    case 'window': {
      const half = hole.width / 2
      if (hole.foot === 'square') return [straight(half, -hole.height / 2, hole.height / 2)]
      const shoulder = half - hole.height / 2
      return [
        { bottom: -hole.height / 2, top: shoulder, edge: { kind: 'circle', radius: half, y: shoulder } },
        straight(half, shoulder, hole.height / 2),
      ]
    }
  }
}

/** An edge x(y) = centre + sign·w(y) of a strip that was moved by (dx, dy). */
interface Edge {
  readonly strip: Strip
  readonly dx: number
  readonly dy: number
  readonly sign: 1 | -1
}

const edgeAt = ({ strip, dx, dy, sign }: Edge, y: number): number => {
  if (strip.edge.kind === 'straight') return dx + sign * strip.edge.halfWidth
  const t = y - dy - strip.edge.y
  return dx + sign * Math.sqrt(Math.max(0, strip.edge.radius ** 2 - t * t))
}

/** ∫ x(y) dy along an edge. */
const edgeIntegral = ({ strip, dx, dy, sign }: Edge, from: number, to: number): number => {
  if (strip.edge.kind === 'straight') return (dx + sign * strip.edge.halfWidth) * (to - from)
  const { radius, y } = strip.edge
  const half = (at: number): number => {
    const t = Math.max(-radius, Math.min(radius, at - dy - y))
    return (t * Math.sqrt(radius * radius - t * t) + radius * radius * Math.asin(t / radius)) / 2
  }
  return dx * (to - from) + sign * (half(to) - half(from))
}

/** Heights where two edges cross. */
const crossings = (a: Edge, b: Edge): number[] => {
  const ea = a.strip.edge
  const eb = b.strip.edge
  if (ea.kind === 'straight' && eb.kind === 'straight') return []
  if (ea.kind === 'circle' && eb.kind === 'circle') {
    const ay = a.dy + ea.y
    const x = b.dx - a.dx
    const y = b.dy + eb.y - ay
    const distance = Math.hypot(x, y)
    if (distance === 0 || distance > ea.radius + eb.radius || distance < Math.abs(ea.radius - eb.radius))
      return []
    const along = (distance ** 2 + ea.radius ** 2 - eb.radius ** 2) / (2 * distance)
    const across = Math.sqrt(Math.max(0, ea.radius ** 2 - along ** 2))
    const foot = ay + (along * y) / distance
    const rise = (across * x) / distance
    return [foot + rise, foot - rise]
  }
  const [circle, line] = ea.kind === 'circle' ? [a, b] : [b, a]
  if (circle.strip.edge.kind !== 'circle' || line.strip.edge.kind !== 'straight') return []
  const { radius, y } = circle.strip.edge
  const x = line.dx + line.sign * line.strip.edge.halfWidth - circle.dx
  if (Math.abs(x) > radius) return []
  const rise = Math.sqrt(radius * radius - x * x)
  return [circle.dy + y + rise, circle.dy + y - rise]
}

const stripOverlap = (a: Strip, b: Strip, dx: number, dy: number): number => {
  const bottom = Math.max(a.bottom, b.bottom + dy)
  const top = Math.min(a.top, b.top + dy)
  if (!(top > bottom)) return 0
  const edge = (strip: Strip, sign: 1 | -1, x: number, y: number): Edge => ({ strip, dx: x, dy: y, sign })
  const lefts = [edge(a, -1, 0, 0), edge(b, -1, dx, dy)]
  const rights = [edge(a, 1, 0, 0), edge(b, 1, dx, dy)]
  const ofA = [lefts[0], rights[0]] as [Edge, Edge]
  const ofB = [lefts[1], rights[1]] as [Edge, Edge]
  const breaks = [bottom, top, ...ofA.flatMap((p) => ofB.flatMap((q) => crossings(p, q)))]
    .filter((y) => y >= bottom && y <= top)
    .sort((p, q) => p - q)
  let area = 0
  for (let i = 0; i + 1 < breaks.length; i++) {
    const from = breaks[i] as number
    const to = breaks[i + 1] as number
    const middle = (from + to) / 2
    const left = lefts.reduce((p, q) => (edgeAt(q, middle) > edgeAt(p, middle) ? q : p))
    const right = rights.reduce((p, q) => (edgeAt(q, middle) < edgeAt(p, middle) ? q : p))
    if (edgeAt(right, middle) > edgeAt(left, middle))
      area += edgeIntegral(right, from, to) - edgeIntegral(left, from, to)
  }
  return area
}

/** Common area of two openings whose middles are `along` (round the wall) and `up` apart [m²]. Lengths in metres. */
export const openingOverlap = (a: WallHole, b: WallHole, along: number, up: number): number => {
  let area = 0
  for (const p of strips(a)) for (const q of strips(b)) area += stripOverlap(p, q, along, up)
  return area
}
