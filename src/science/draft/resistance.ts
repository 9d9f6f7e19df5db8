/**
 * What a passage puts in the way of a flow, with the gas taken out, so that a change of temperature costs two
 * multiplications. Every law is Δp = linear·ṁ + quadratic·ṁ·|ṁ| [Pa] with linear = viscous·μ/ρ [Pa s/kg] and
 * quadratic = inertial/ρ [Pa s²/kg²]: ρ [kg/m³] and μ [Pa s] are those of the gas that passes.
 */
export interface PassageShape {
  /** [1/m³] */
  readonly viscous: number
  /** [1/m⁴] */
  readonly inertial: number
}

/**
 * Creeping-flow constant: ζ = 30/Re for a hole at Re < 10, Idelchik diagram 8-5 as given by
 * Electronics Cooling, May 1998 [bib:idelchik1986] [bib:electronicscooling1998]. Sampson's exact single hole has 12π = 37.7.
 */
export const CREEPING_HOLE_LOSS = 30

/**
 * Loss of a round hole with thick edges on the hole velocity [1]; 0 ≤ t/d ≤ 1.4, flat beyond.
 * Rennels & Hudson: C = [1 − ½(t/1.4d)^2.5 − ½(t/1.4d)³]^4.5, ζ = 0.183 + C·1.622² + (1 − C)(0.387 + 1) for d/D → 0
 * [bib:rennels2012]. At t = 0 it is their sharp hole in thin sheet, ζ = 2.814, Cd = 0.596.
 */
export const thickHoleLoss = (thickness: number, diameter: number): number => {
  const x = Math.min(1, thickness / (1.4 * diameter))
  const c = (1 - 0.5 * x ** 2.5 - 0.5 * x ** 3) ** 4.5
  return 0.183 + c * 1.622 ** 2 + (1 - c) * 1.387
}

/**
 * `count` equal holes side by side: ζ = ζ∞ + (30 + 64 t/d)/Re, Re on the hole velocity and hydraulic diameter.
 * The 64 t/d is Dagan, Weinbaum & Pfeffer's tube term for a hole of finite thickness (1982, from memory; small
 * in tin: 1.3 of 31 for 0.2 mm and 10 mm).
 */
export const holes = (
  count: number,
  area: number,
  hydraulicDiameter: number,
  thickness: number,
): PassageShape => {
  const total = count * area
  const creeping = CREEPING_HOLE_LOSS + (64 * thickness) / hydraulicDiameter
  return {
    viscous: creeping / (2 * hydraulicDiameter * total),
    inertial: thickHoleLoss(thickness, hydraulicDiameter) / (2 * total * total),
  }
}

/**
 * Loss of a thin plate with open share `f` across a duct, on the approach velocity, Re_hole > 1e5 [1].
 * ζ = (0.707 √(1 − f) + 1 − f)²/f², Idelchik diagram 8-1 [bib:idelchik1986]; 0.02 ≤ f ≤ 0.9.
 */
export const perforatedPlateLoss = (openShare: number): number =>
  ((0.707 * Math.sqrt(1 - openShare) + 1 - openShare) / openShare) ** 2

/**
 * A thin sharp-edged opening of area `open` between a duct of area `before` and one of area `after` (either may be
 * infinite), loss on the velocity in the opening [1]. ζ = (1 + 0.707 √(1 − F₀/F₁) − F₀/F₂)², Idelchik section 4
 * [bib:idelchik1986]; with F₁ = F₂ it is diagram 8-1. For a hole in the open it gives 2.91 where a sharp orifice has
 * 2.81; that 3.5 % is within the spread of its source.
 */
export const throatLoss = (open: number, before: number, after: number): number => {
  const f1 = Math.min(1, open / before)
  const f2 = Math.min(1, open / after)
  return (1 + 0.707 * Math.sqrt(1 - f1) - f2) ** 2
}

/**
 * Holes or a bore in a plate across a duct. The two directions differ a little (F₁ and F₂ change places); the larger
 * duct is taken upstream for both, within 15 %, so that the law stays odd.
 */
export const throat = (
  open: number,
  hydraulicDiameter: number,
  before: number,
  after: number,
): PassageShape => ({
  viscous: CREEPING_HOLE_LOSS / (2 * hydraulicDiameter * open),
  inertial: throatLoss(open, Math.max(before, after), Math.min(before, after)) / (2 * open * open),
})

/**
 * Friction factor times Reynolds number of developed laminar flow in a ring gap, on the hydraulic diameter
 * D_o − D_i, Fanning's f [1]. Exact solution; `k` is inner/outer radius, 0 < k < 1 (limits 16 and 24).
 */
export const annulusFriction = (k: number): number => {
  if (k >= 0.9999) return 24
  const q = (1 - k * k) / Math.log(1 / k)
  return (16 * (1 - k) ** 2) / (1 + k * k - q)
}

/** Laminar friction along a ring gap (or, with `inner` 0, a round tube: f·Re = 16) of length `length`. */
export const duct = (inner: number, outer: number, length: number): PassageShape => {
  const area = Math.PI * (outer * outer - inner * inner)
  const hydraulicDiameter = 2 * (outer - inner)
  const fRe = inner > 0 ? annulusFriction(inner / outer) : 16
  // Δp = 4 f L/D · ρu²/2 with f = fRe·μ/(ρ u D).
  return { viscous: (2 * fRe * length) / (hydraulicDiameter * hydraulicDiameter * area), inertial: 0 }
}

/**
 * A bed of pieces, Ergun's equation on the superficial velocity: Δp/L = 150 μ(1−ε)²u/(ε³d²) + 1.75 ρ(1−ε)u²/(ε³d)
 * [bib:ergun1952]. `diameter` is the Sauter diameter; tested for 1 < Re/(1−ε) < 2500 and void 0.36–0.92.
 */
export const bed = (area: number, depth: number, voidFraction: number, diameter: number): PassageShape => {
  const solid = 1 - voidFraction
  const void3 = voidFraction ** 3
  return {
    viscous: (150 * solid * solid * depth) / (void3 * diameter * diameter * area),
    inertial: (1.75 * solid * depth) / (void3 * diameter * area * area),
  }
}

/** Two passages one after the other in the same gas. */
export const inSeries = (first: PassageShape, second: PassageShape): PassageShape => ({
  viscous: first.viscous + second.viscous,
  inertial: first.inertial + second.inertial,
})
