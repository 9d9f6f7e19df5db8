import DxfParser from 'dxf-parser'
import type { Primitive, Spot } from './primitive.ts'

type Parser = { readonly parseSync: (text: string) => unknown }
// The package's types say the class is the module; in fact it is its default.
const Class = ((DxfParser as unknown as { default?: unknown }).default ?? DxfParser) as new () => Parser

interface Read {
  readonly header: Readonly<Record<string, unknown>>
  readonly entities: readonly Readonly<Record<string, unknown>>[]
}

const spot = (value: unknown): Spot => {
  const { x, y } = value as Spot
  return { x, y }
}

/** A DXF as dxf-parser reads it, its texts apart. */
export const readDxf = (
  text: string,
): {
  readonly header: Read['header']
  readonly items: readonly Primitive[]
  readonly texts: readonly string[]
} => {
  const { header, entities } = new Class().parseSync(text) as Read
  const texts: string[] = []
  const items = entities.flatMap((entity): readonly Primitive[] => {
    const layer = String(entity.layer).toLowerCase()
    const radius = Number(entity.radius)
    switch (entity.type) {
      case 'LINE':
        return [{ kind: 'path', layer, points: (entity.vertices as unknown[]).map(spot), closed: false }]
      case 'POLYLINE':
        return [
          {
            kind: 'path',
            layer,
            points: (entity.vertices as unknown[]).map(spot),
            closed: entity.shape === true,
          },
        ]
      case 'CIRCLE':
        return [{ kind: 'circle', layer, centre: spot(entity.center), radius }]
      case 'ARC': {
        const centre = spot(entity.center)
        const at = (angle: unknown): Spot => ({
          x: centre.x + radius * Math.cos(Number(angle)),
          y: centre.y + radius * Math.sin(Number(angle)),
        })
        return [{ kind: 'arc', layer, centre, radius, ends: [at(entity.startAngle), at(entity.endAngle)] }]
      }
      case 'TEXT':
        texts.push(String(entity.text))
        return []
      default:
        throw new Error(`a ${entity.type} among the entities`)
    }
  })
  return { header, items, texts }
}
