import type { Site } from '#science/site.ts'
import type { Duty } from '#stove/model.ts'

/** What the model says of a stove while its front travels down. Plain data, SI units, ready for JSON. */
export interface Prediction {
  readonly stove: string
  readonly fuel: FuelPrediction
  readonly site: Site
  /** With the front halfway down, or where it last burns if it goes out before. */
  readonly halfway: Moment
  /** Where a front that does not reach the floor goes out, and why; null for one that does. */
  readonly stops: { readonly frontPosition: number; readonly sentence: string } | null
  /** Over the whole wood-gas phase, front from top to floor. */
  readonly woodGas: {
    /** [s] */
    readonly duration: number
    /** Mean, highest and lowest heat release [W]. */
    readonly firepower: number
    readonly firepowerHighest: number
    readonly firepowerLowest: number
    /** Char left on the floor, ash included [kg]. */
    readonly charLeft: number
    /** Share of the fuel's energy still in that char [1]. */
    readonly charEnergyShare: number
  }
}

export interface FuelPrediction {
  readonly key: string
  readonly label: string
  /** Wet basis [1]. */
  readonly moisture: number
  /** As fired [kg]. */
  readonly charge: number
  /** Lower heating value as fired [J/kg]. */
  readonly lowerHeatingValue: number
  readonly bedArea: number
  readonly bedDepth: number
}

export type Regime = 'smoulder' | 'clean' | 'rich and smoky' | 'quenched lean'

/** One moment of the steady burn. */
export interface Moment {
  /** 0 when lit, 1 when the front reaches the floor. */
  readonly frontPosition: number
  readonly regime: Regime
  /** Heat set free in the stove: fuel less char less gas that leaves unburnt, lower heating value [W]. */
  readonly firepower: number
  /** Fuel as fired [kg/s]. */
  readonly fuelRate: number
  /** Air through the bed's cross-section, at ambient density [m/s]. */
  readonly superficialVelocity: number
  /** Primary air per bed area [kg/(m² s)]. */
  readonly primaryFlux: number
  readonly air: {
    /** Through the fuel, into the flame space over it, into later flame spaces [kg/s]. */
    readonly primary: number
    readonly secondary: number
    readonly tertiary: number
    /** Secondary over primary, by mass [1]. */
    readonly secondaryToPrimary: number
  }
  /** Flue gas that leaves the stove [kg/s]. */
  readonly flueGas: number
  /** Air met by the gas over the air it needs: in the flame space over the fuel, and where it leaves the stove [1]. */
  readonly airRatio: { readonly flame: number; readonly outlet: number }
  readonly temperature: {
    /** [K] */
    readonly front: number
    readonly flame: number
    readonly outlet: number
    /** Secondary air as it enters the flame. */
    readonly secondaryAir: number
  }
  readonly flame: FlameFacts
  /** Outer walls, hottest first: part, height of the stretch's middle [m], temperature [K]. */
  readonly outerWalls: readonly {
    readonly part: string
    readonly height: number
    readonly temperature: number
  }[]
  /** Dry wood gas, volume shares [1], and its lower heating value [J/Nm³ at 0 °C, 101325 Pa]. */
  readonly gas: {
    readonly CO: number
    readonly CO2: number
    readonly H2: number
    readonly CH4: number
    readonly N2: number
    readonly lowerHeatingValue: number
  }
  readonly passages: readonly Passage[]
  readonly spaces: readonly {
    readonly name: string
    readonly height: number
    readonly pressure: number
    readonly temperature: number
  }[]
  readonly balance: {
    /** Worst imbalance of any space over the largest flow [1]; ≤ 1e-9. */
    readonly mass: number
    /** Heat in less heat out over the fuel's heat [1]; ≤ 1e-6. */
    readonly energy: number
  }
  readonly effort: { readonly rounds: number; readonly newtonSteps: number }
}

/** How the gas meets its air, and where the flame ends. */
export interface FlameFacts {
  /** Above the concentrator [m]. */
  readonly height: number
  /** Null without a pot. */
  readonly strikesPot: boolean | null
  /** Swirl number of the vanes with the bore, null without vanes [1]; whether gas flows back on the axis. */
  readonly swirl: number | null
  readonly recirculates: boolean | null
  /** Each row of holes that blows into the space over the fuel. */
  readonly jets: readonly JetFacts[]
}

export interface JetFacts {
  readonly part: string
  readonly opening: string
  readonly count: number
  /** Momentum of the jets over the gas's [1]. */
  readonly momentumRatio: number
  /** Share of the way to the middle that they reach [1]. */
  readonly reach: number
  /** Number of holes that would mix best at this draught [1]. */
  readonly bestCount: number
  /** Outside what the forms were tested with: `J` above 100, laminar jets. */
  readonly outsideTests: readonly string[]
}

/** What goes through one opening, gap, throat or the bed. */
export interface Passage {
  readonly name: string
  readonly kind: 'opening' | 'throat' | 'gap' | 'bed'
  readonly part: string | null
  readonly opening: string | null
  readonly duty: Duty | null
  /** The spaces it joins, as indices of `Moment.spaces`; null is the open air. Positive flow goes `from` → `to`. */
  readonly from: number | null
  readonly to: number | null
  /** Where it lies above the ground; of a gap or the bed, its lower end [m]. */
  readonly height: number
  readonly count: number
  /** Free area [m²]. */
  readonly area: number
  /** Of one opening [m]. */
  readonly hydraulicDiameter: number
  /** Positive into the stove or up through it [kg/s]. */
  readonly massFlow: number
  /** Part of it through holes of the row that run the other way: wind blows in on one side and out on the other [kg/s]. */
  readonly backFlow: number
  /** In the opening; over the cross-section of a bed [m/s]. */
  readonly velocity: number
  readonly reynolds: number
  /** Pressure that drives it, buoyancy included [Pa]. */
  readonly pressureDrop: number
  /** Share of the power that the net flows of all passages take; wind straight through a row is not counted [1]. */
  readonly lossShare: number
  /** Of the gas that passes [K]. */
  readonly temperature: number
}
