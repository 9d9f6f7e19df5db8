import type { Part, Stove } from '#stove/model.ts'
import type { Drawing } from '../drawing.ts'
import { bandStrip } from './band.ts'
import { canEnds, cutOutEnds, discFace } from './disc.ts'
import { drawDisc } from './discDrawing.ts'
import { drawStrip } from './stripDrawing.ts'
import { canWrap } from './wrap.ts'

const partPatterns = (stove: Stove, name: string, part: Part): readonly Drawing[] => {
  switch (part.form) {
    case 'can': {
      const wrap = canWrap(name, part)
      const drawn = [...(wrap === null ? [] : [drawStrip(wrap)]), ...canEnds(name, part).map(drawDisc)]
      return drawn.length > 0 ? drawn : cutOutEnds(name, part).map(drawDisc)
    }
    case 'disc':
      return [drawDisc(discFace(name, part))]
    case 'band':
      return [drawStrip(bandStrip(stove, name, part))]
  }
}

/**
 * True-size flat patterns of everything that is drilled or cut, in the order of the stove file [mm]:
 * the wrap of every can with openings in its wall, the drilled ends of every can, the ends cut out of one with neither, every
 * disc, every band.
 * Throws `BadInput` for a band that goes round no can.
 */
export const flatPatterns = (stove: Stove): readonly Drawing[] =>
  [...stove.parts].flatMap(([name, part]) => partPatterns(stove, name, part))
