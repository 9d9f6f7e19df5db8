import type { Regime } from '#science/steady/prediction.ts'

/** What a burn is at one moment. SI units; plain data, ready for JSON. */
export interface BurnSample {
  /** Since lighting [s]. */
  readonly time: number
  readonly phase: BurnPhase
  /** 0 at the top of the fuel, 1 at its floor. */
  readonly frontPosition: number
  /** Share of the bed's area alight [1]. */
  readonly alight: number
  readonly regime: Regime | null
  /** Heat set free, lower heating value [W]. */
  readonly firepower: number
  /** Fuel or char that glows away, as fired [kg/s]. */
  readonly fuelRate: number
  /** Primary, secondary and tertiary air [kg/s]. */
  readonly primaryAir: number
  readonly secondaryAir: number
  readonly tertiaryAir: number
  readonly airRatio: { readonly flame: number; readonly outlet: number }
  /** [K] */
  readonly flameTemperature: number
  readonly outletTemperature: number
  readonly hottestOuterWall: number
  /** What the pot gets to see. */
  readonly hearth: {
    /** Flue gas that leaves [kg/s] and its mean temperature [K]. */
    readonly flueGas: number
    /** Heat that flames radiate past the walls, and heat that bare char glows upwards [W]. */
    readonly flameRadiation: number
    readonly charGlow: number
    readonly charTemperature: number
    /** Of the flame over the concentrator [m]. */
    readonly flameHeight: number
    readonly strikesPot: boolean
  }
  /** Raw fuel and char in the bed [kg]. */
  readonly rawFuel: number
  readonly char: number
}

export type BurnPhase = 'lighting' | 'wood gas' | 'char'

/** A step of the burn: the sample holds from `time` for `duration`. */
export interface BurnStep extends BurnSample {
  /** [s] */
  readonly duration: number
}

export interface BurnEvent {
  readonly time: number
  readonly kind:
    | 'lit'
    | 'changed'
    | 'whole bed alight'
    | 'front at the floor'
    | 'front out'
    | 'flame out'
    | 'char out'
    | 'end'
  readonly sentence: string
}

/** Where the march of a burn stands; it is written over from step to step. */
export interface BurnState {
  /** Since lighting [s]. */
  time: number
  phase: BurnPhase
  /** 0 at the top of the fuel, 1 at its floor. */
  front: number
  /** Organic char in the bed, and what the front has left in all [kg]. */
  char: number
  charMade: number
}
