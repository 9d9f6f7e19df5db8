/**
 * What the picture needs to know of a burn, as plain data in SI units. The steady prediction of `science` has all of
 * it; so has anything else that can say what flows where.
 */
export interface AirState {
  /** 0 when lit, 1 when the front reaches the floor. */
  readonly frontPosition: number
  /** A word for how it burns, such as `clean`. */
  readonly regime: string
  /** [W] */
  readonly firepower: number
  readonly air: {
    /** [kg/s] */
    readonly primary: number
    readonly secondary: number
    readonly tertiary: number
    /** By mass [1]. */
    readonly secondaryToPrimary: number
  }
  readonly temperature: {
    /** [K] */
    readonly front: number
    readonly flame: number
  }
  readonly passages: readonly AirPassage[]
}

/** What goes through one row, pattern, bore, throat, gap or the bed. Positive flow goes `from` → `to`. */
export interface AirPassage {
  readonly name: string
  readonly kind: 'opening' | 'throat' | 'gap' | 'bed'
  readonly part: string | null
  readonly opening: string | null
  /** Numbers of the spaces it joins; null is the open air. */
  readonly from: number | null
  readonly to: number | null
  /** Above the ground [m]. */
  readonly height: number
  readonly count: number
  /** Free area [m²]. */
  readonly area: number
  /** Of one opening [m]. */
  readonly hydraulicDiameter: number
  /** [kg/s] */
  readonly massFlow: number
  /** [m/s] */
  readonly velocity: number
  /** Share of the draught's work that is spent here [1]. */
  readonly lossShare: number
  /** Of what passes [K]. */
  readonly temperature: number
}

/** What the answers beside the picture say. */
export interface BurnSummary {
  readonly halfway: AirState
  readonly fuel: {
    readonly label: string
    /** As fired [kg]. */
    readonly charge: number
    /** Wet basis [1]. */
    readonly moisture: number
  }
  readonly woodGas: {
    /** [s] */
    readonly duration: number
    /** [W] */
    readonly firepower: number
    readonly firepowerHighest: number
    readonly firepowerLowest: number
  }
}
