import { networkSets } from './draught/networks.ts'
import { orificePlateSets } from './draught/orificePlate.ts'
import { packingSets } from './draught/packing.ts'
import { passageSets } from './draught/passages.ts'
import { pelletSets } from './draught/pellets.ts'
import { weatherSets } from './draught/weather.ts'
import { flameHeightSets } from './fire/flame.ts'
import { frontSets } from './fire/front.ts'
import { heatingValueSets } from './fire/heatingValue.ts'
import { secondProgramSets } from './fire/secondProgram.ts'
import { stoveSets } from './fire/stoves.ts'
import { constantSets } from './gas/constants.ts'
import { flameSets } from './gas/flames.ts'
import { janafSets } from './gas/janaf.ts'
import { programSets } from './gas/programs.ts'
import { transportSets } from './gas/transport.ts'
import { convectionSets } from './heat/convection.ts'
import { radiationSets } from './heat/radiation.ts'
import { waterSets } from './heat/water.ts'
import type { Subject } from './row.ts'

/** Everything that ours is laid beside: the tests and the page both read this and nothing else. */
export const subjects: readonly Subject[] = [
  { name: 'Gas', sets: janafSets },
  { name: 'Transport', sets: transportSets },
  { name: 'Equilibrium', sets: [...constantSets, ...flameSets, ...programSets] },
  { name: 'Draught', sets: [...passageSets, ...orificePlateSets, ...networkSets, ...weatherSets] },
  { name: 'Bed', sets: [...heatingValueSets, ...packingSets, ...pelletSets] },
  { name: 'Heat', sets: [...convectionSets, ...radiationSets] },
  { name: 'Pot', sets: waterSets },
  { name: 'Front', sets: frontSets },
  { name: 'Flame', sets: flameHeightSets },
  { name: 'Whole stove', sets: [...stoveSets, ...secondProgramSets] },
]
