/**
 * What a stove promises, handed in as plain data: craft works nothing out about fire. SI units; null where it does
 * not burn.
 */
export interface Outlook {
  /** `clean`, `smoulder`, …, `does not burn`. */
  readonly course: string
  /** Why it does not burn or goes out; null where it burns to the floor. */
  readonly reason: string | null
  readonly figures: OutlookFigures | null
}

export interface OutlookFigures {
  /** Mean of the wood-gas phase [W]. */
  readonly firepower: number
  /** Of the wood-gas phase [s]. */
  readonly duration: number
  /** As fired [kg/s]. */
  readonly fuelRate: number
  /** Shares of all air [1]. */
  readonly primaryAirShare: number
  readonly secondaryAirShare: number
  readonly tertiaryAirShare: number
  /** By mass [1]. */
  readonly secondaryToPrimary: number
}
