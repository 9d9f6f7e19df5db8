import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStove, readStoveValue } from '#stove/document/read.ts'
import type { CanPart, Opening, RowOpening, Stove } from '#stove/model.ts'
import { exampleNamed } from './examples.ts'

type Path = readonly (string | number)[]

/** An example with some places set; `undefined` takes the key out. */
const changed = (name: string, ...changes: readonly (readonly [Path, unknown])[]) => {
  const file = JSON.parse(exampleNamed(name).text)
  for (const [path, value] of changes) {
    const holder = path.slice(0, -1).reduce((here, step) => here[step], file)
    if (value === undefined) delete holder[path.at(-1) as string]
    else holder[path.at(-1) as string] = value
  }
  return readStoveValue(file as JsonValue)
}

const stoveWith = (name: string, ...changes: readonly (readonly [Path, unknown])[]): Stove =>
  orThrow(changed(name, ...changes)).stove

const told = (name: string, ...changes: readonly (readonly [Path, unknown])[]) => {
  const outcome = changed(name, ...changes)
  if (outcome.ok) throw new Error('was read')
  return outcome.problems.map(({ code, field }) => [code, field])
}

const opening = (stove: Stove, part: string, name: string): Opening => {
  const found = stove.parts.get(part)?.openings.get(name)
  if (found === undefined) throw new Error(`no ${part}.${name}`)
  return found
}

const row = (stove: Stove, part: string, name: string): RowOpening => {
  const found = opening(stove, part, name)
  if (found.kind !== 'row') throw new Error(`${name} is no row`)
  return found
}

const canPart = (stove: Stove, name: string): CanPart => {
  const part = stove.parts.get(name)
  if (part?.form !== 'can') throw new Error(`${name} is no can`)
  return part
}

const INTAKE = ['parts', 'shell', 'openings', 'intake'] as const
const FUEL_CAN = ['parts', 'fuel can'] as const

describe('what a stove file means', () => {
  const redshank = orThrow(readStove(exampleNamed('redshank').text))

  test('names, fuel and pot', () => {
    expect(redshank.name).toBe('Redshank')
    expect(redshank.fuel).toEqual({ kind: 'wood-chips', level: 0.082, moisture: 0.12 })
    expect(redshank.potDiameter).toBeCloseTo(0.12, 12)
    expect([...redshank.parts.keys()]).toEqual(['shell', 'fuel can', 'concentrator', 'damper', 'pot stand'])
    expect(redshank.assembly.map(({ part, place, host }) => [part, place, host])).toEqual([
      ['shell', 'on ground', null],
      ['damper', 'slips over', 'shell'],
      ['fuel can', 'hangs in', 'shell'],
      ['concentrator', 'sits on', 'fuel can'],
      ['pot stand', 'sits on', 'shell'],
    ])
    expect(redshank.assembly[1]?.raised).toBeCloseTo(0.009, 12)
  })

  test('what may be left out', () => {
    const bare = stoveWith(
      'redshank',
      [['about'], undefined],
      [['pot'], undefined],
      [['fuel', 'moisture'], undefined],
    )
    expect(bare).toMatchObject({ about: '', potDiameter: null, fuel: { moisture: null } })
    const plain = stoveWith('redshank', [[...FUEL_CAN, 'openings'], undefined])
    expect(canPart(plain, 'fuel can').openings.size).toBe(0)
  })

  test('measured lengths keep their tolerance, others get half a millimetre', () => {
    expect(canPart(redshank, 'shell').can.seamDiameter.tolerance).toBeCloseTo(0.0003, 12)
    const rough = stoveWith('redshank', [['parts', 'shell', 'can', 'height'], '150 mm'])
    expect(canPart(rough, 'shell').can.height).toEqual({ value: 0.15, tolerance: 0.0005 })
  })

  test('what was measured goes over the size code', () => {
    const { can } = canPart(redshank, 'fuel can')
    // 307x409: 3 7/16 in by 4 9/16 in, by the rule of the size code.
    expect(can.code).toBe('307x409')
    expect(can.height.value * 1000).toBeCloseTo(115.8875, 9)
    expect(can.bodyDiameter).toEqual({ value: 0.0846, tolerance: 0.0003 })
  })

  test('a height from the top is measured from the top edge, of a trimmed can from the trimmed one', () => {
    const can = canPart(redshank, 'fuel can').can
    expect(row(redshank, 'fuel can', 'ring').height).toBeCloseTo(can.height.value - 0.016, 12)
    const heron = orThrow(readStove(exampleNamed('heron').text))
    expect(canPart(heron, 'riser').can.height).toEqual({ value: 0.135, tolerance: 0.001 })
    expect(row(heron, 'riser', 'windows').height).toBeCloseTo(0.135 - 0.017, 12)
  })

  test('bearing and stagger add up, inside one turn', () => {
    const at = (bearing: string | undefined, stagger: boolean) =>
      row(
        stoveWith('redshank', [[...INTAKE, 'bearing'], bearing], [[...INTAKE, 'stagger'], stagger]),
        'shell',
        'intake',
      ).bearing
    expect(at(undefined, false)).toBe(0)
    expect(at(undefined, true)).toBeCloseTo(15, 12)
    expect(at('350 deg', true)).toBeCloseTo(5, 12)
    expect(at('-90°', false)).toBe(270)
  })

  test('holes of every shape', () => {
    const shape = (hole: unknown) =>
      row(stoveWith('redshank', [[...INTAKE, 'hole'], hole]), 'shell', 'intake').hole
    expect(shape({ bit: '3/8 in' })).toEqual({ shape: 'round', diameter: 0.009525, bit: '3/8 in' })
    expect(shape({ diameter: '11 mm' })).toEqual({ shape: 'round', diameter: 0.011, bit: null })
    expect(shape({ slit: { length: '20 mm', width: '2 mm', along: 'axis' } })).toEqual({
      shape: 'slit',
      length: 0.02,
      width: 0.002,
      along: 'axis',
    })
    expect(shape({ window: { width: '10 mm', height: '15 mm' } })).toEqual({
      shape: 'window',
      width: 0.01,
      height: 0.015,
      foot: 'square',
      bit: null,
    })
    expect(shape({ window: { width: '10 mm', height: '15 mm', foot: 'round', bit: '10 mm' } })).toMatchObject(
      {
        foot: 'round',
        bit: '10 mm',
      },
    )
  })

  test('patterns are placed: 19 holes of a honeycomb, the outer ones the margin away from the wall', () => {
    const floor = opening(redshank, 'fuel can', 'floor')
    if (floor.kind !== 'pattern') throw new Error('no pattern')
    expect(floor.holes).toHaveLength(19)
    const inside = 84.6 / 2 - canPart(redshank, 'fuel can').can.bodyWall * 1000
    expect(Math.max(...floor.holes.map(({ radius }) => radius)) * 1000).toBeCloseTo(inside - 12 - 2, 9)
  })

  test('a disc has one face, whether the file names it or not', () => {
    expect(opening(redshank, 'concentrator', 'bore')).toMatchObject({ face: 'face' })
    const named = stoveWith('redshank', [['parts', 'concentrator', 'openings', 'bore', 'face'], 'face'])
    expect(opening(named, 'concentrator', 'bore')).toEqual(opening(redshank, 'concentrator', 'bore'))
  })

  test('holes may lie in the ring that a lever lid leaves, not in the hole inside it', () => {
    const ringHoles = (radius: string) => ({
      kind: 'pattern',
      duty: 'tertiary',
      face: 'top',
      hole: { bit: '3 mm' },
      layout: { rings: [{ radius, count: 12 }] },
    })
    expect(
      opening(
        stoveWith('redshank', [[...INTAKE.slice(0, 3), 'top ring'], ringHoles('46.5 mm')]),
        'shell',
        'top ring',
      ),
    ).toMatchObject({
      face: 'top',
    })
    expect(told('redshank', [[...INTAKE.slice(0, 3), 'top ring'], ringHoles('40 mm')])).toEqual([
      ['pattern.in-opening', 'parts.shell.openings.top ring.layout'],
    ])
  })

  test('neighbours left out make room for wider holes', () => {
    const wide = { bit: '30 mm' }
    const height = [[...INTAKE, 'height'], '40 mm'] as const
    expect(told('redshank', [[...INTAKE, 'hole'], wide], height)).toEqual([
      ['row.overlap', 'parts.shell.openings.intake.count'],
    ])
    const every = [2, 4, 6, 8, 10, 12]
    expect(changed('redshank', [[...INTAKE, 'hole'], wide], height, [[...INTAKE, 'leftOut'], every]).ok).toBe(
      true,
    )
  })
})

describe('what is told', () => {
  test('everything wrong with single fields, in one go', () => {
    expect(
      told(
        'redshank',
        [['fuel', 'level'], '60'],
        [['fuel', 'kind'], 'Pellets 6mm'],
        [[...INTAKE, 'hole', 'bit'], 'q9'],
        [[...INTAKE, 'cuont'], 12],
        [[...INTAKE, 'count'], undefined],
        [['parts', 'shell', 'bottom', 'end'], 'plian'],
        [['parts', 'shell', 'role'], 'jacket'],
        [['assembly', 0, 'place'], 'on the ground'],
        [['name'], undefined],
      ).sort(),
    ).toEqual(
      [
        ['length.no-unit', 'fuel.level'],
        ['fuel.kind', 'fuel.kind'],
        ['length.not-a-number', 'parts.shell.openings.intake.hole.bit'],
        ['key.unknown', 'parts.shell.openings.intake.cuont'],
        ['choice.unknown', 'parts.shell.bottom.end'],
        ['choice.unknown', 'parts.shell.role'],
        ['choice.unknown', 'assembly[0].place'],
        ['words.not-text', 'name'],
      ].sort(),
    )
  })

  test('everything that does not go together, in one go', () => {
    expect(
      told(
        'redshank',
        [[...INTAKE, 'height'], '149 mm'],
        [
          [...INTAKE, 'leftOut'],
          [7, 7],
        ],
        [[...FUEL_CAN, 'openings', 'ring', 'count'], 60],
        [['parts', 'damper', 'openings', 'windows', 'count'], 40],
        [['parts', 'concentrator', 'openings', 'vanes', 'outerRadius'], '46 mm'],
        [['assembly', 4, 'host'], 'sheII'],
        [['fuel', 'level'], '120 mm'],
      ),
    ).toEqual([
      ['row.left-out-twice', 'parts.shell.openings.intake.leftOut[1]'],
      ['row.overlap', 'parts.fuel can.openings.ring.count'],
      ['vanes.outside', 'parts.concentrator.openings.vanes.outerRadius'],
      ['row.overlap', 'parts.damper.openings.windows.count'],
      ['assembly.unknown-part', 'assembly[4].host'],
      ['fuel.above-can', 'fuel.level'],
    ])
  })

  test.each<[string, readonly (readonly [Path, unknown])[], string, string]>([
    ['no hole', [[[...INTAKE, 'hole'], {}]], 'key.missing', 'parts.shell.openings.intake.hole'],
    ['a hole as text', [[[...INTAKE, 'hole'], '12 mm']], 'type.wrong', 'parts.shell.openings.intake.hole'],
    [
      'two holes at once',
      [[[...INTAKE, 'hole'], { bit: '6 mm', diameter: '6 mm' }]],
      'choice.several',
      'parts.shell.openings.intake.hole',
    ],
    [
      'a slip inside a window',
      [[[...INTAKE, 'hole'], { window: { width: '6 mm', hieght: '9 mm' } }]],
      'key.unknown',
      'parts.shell.openings.intake.hole.window.hieght',
    ],
    [
      'a fault inside a slit',
      [[[...INTAKE, 'hole'], { slit: { length: '6 mm', width: '9 mm', along: 'axis' } }]],
      'slit.swapped',
      'parts.shell.openings.intake.hole.slit.length',
    ],
    [
      'a foot higher than its window',
      [[[...INTAKE, 'hole'], { window: { width: '20 mm', height: '8 mm', foot: 'round' } }]],
      'window.foot',
      'parts.shell.openings.intake.hole.window.height',
    ],
    [
      'a bit that is not its window’s',
      [[[...INTAKE, 'hole'], { window: { width: '10 mm', height: '15 mm', foot: 'round', bit: '12 mm' } }]],
      'window.bit',
      'parts.shell.openings.intake.hole.window.bit',
    ],
    ['a list for an object', [[['fuel'], []]], 'type.wrong', 'fuel'],
    ['nothing for the fuel', [[['fuel'], undefined]], 'key.missing', 'fuel'],
    ['an unusable name', [[['parts', 'shell.top'], { form: 'band' }]], 'name.unusable', 'parts.shell.top'],
    [
      'a row in a disc',
      [[['parts', 'concentrator', 'openings', 'bore', 'kind'], 'row']],
      'choice.unknown',
      'parts.concentrator.openings.bore.kind',
    ],
    ['an empty assembly', [[['assembly'], []]], 'list.length', 'assembly'],
    [
      'both pitch and count',
      [[[...FUEL_CAN, 'openings', 'floor', 'layout', 'hexagonal', 'pitch'], '9 mm']],
      'pattern.pitch-or-count',
      'parts.fuel can.openings.floor.layout.hexagonal',
    ],
    [
      'a margin without room',
      [[[...FUEL_CAN, 'openings', 'floor', 'layout', 'hexagonal', 'margin'], '41 mm']],
      'pattern.no-room',
      'parts.fuel can.openings.floor.layout.hexagonal.margin',
    ],
    [
      'more holes than can be meant',
      [[[...FUEL_CAN, 'openings', 'floor', 'layout'], { hexagonal: { pitch: '1 mm', margin: '0 mm' } }]],
      'pattern.too-many',
      'parts.fuel can.openings.floor.layout.hexagonal.pitch',
    ],
    [
      'a trim without a cut end',
      [[['parts', 'shell', 'trim'], { height: '100 mm' }]],
      'trim.no-cut-end',
      'parts.shell.trim',
    ],
    [
      'a cut end without a trim',
      [[['parts', 'shell', 'top'], { end: 'cut' }]],
      'trim.missing',
      'parts.shell.trim',
    ],
    [
      'a bead above a trimmed can',
      [
        [['parts', 'shell', 'top'], { end: 'cut' }],
        [['parts', 'shell', 'trim'], { height: '100 mm' }],
        [['parts', 'shell', 'can', 'beads'], [{ from: '110 mm', to: '120 mm' }]],
      ],
      'can.bead',
      'parts.shell.can.beads[0]',
    ],
    [
      'a body wider than its seam',
      [[['parts', 'shell', 'can', 'bodyDiameter'], '110 mm']],
      'can.body-over-seam',
      'parts.shell.can.bodyDiameter',
    ],
    [
      'a can by code that is no stove can',
      [[[...FUEL_CAN, 'can'], { code: '9900x409' }]],
      'size-code.range',
      'parts.fuel can.can.code',
    ],
    [
      'a band that sits',
      [[['assembly', 1], { part: 'damper', place: 'sits on', host: 'shell' }]],
      'assembly.band',
      'assembly[1].place',
    ],
    ['a disc that hangs', [[['assembly', 3, 'place'], 'hangs in']], 'assembly.disc', 'assembly[3].place'],
    ['a can on a band', [[['assembly', 4, 'host'], 'damper']], 'assembly.on-band', 'assembly[4].place'],
    [
      'a can that stands in a disc',
      [[['assembly', 4], { part: 'pot stand', place: 'stands in', host: 'concentrator' }]],
      'assembly.host-disc',
      'assembly[4].place',
    ],
    [
      'raised where nothing can be',
      [[['assembly', 2, 'raised'], '3 mm']],
      'key.unknown',
      'assembly[2].raised',
    ],
    [
      'a bore no wider than the ring it is cut in',
      [
        [
          ['parts', 'shell', 'openings', 'mouth'],
          { kind: 'bore', duty: 'passage', face: 'top', diameter: '80 mm' },
        ],
      ],
      'bore.in-opening',
      'parts.shell.openings.mouth.diameter',
    ],
    [
      'vanes in the hole of a ring',
      [
        [
          ['parts', 'shell', 'openings', 'mouth'],
          {
            kind: 'vanes',
            duty: 'passage',
            face: 'top',
            count: 8,
            innerRadius: '40 mm',
            outerRadius: '47 mm',
            width: '3 mm',
            angle: '30 deg',
            hand: 'clockwise',
          },
        ],
      ],
      'vanes.in-opening',
      'parts.shell.openings.mouth.innerRadius',
    ],
  ])('%s', (_, changes, code, field) => {
    expect(told('redshank', ...changes)).toContainEqual([code, field])
  })

  test('a window in a damper too wide for the can under it', () => {
    const outcome = changed('redshank', [
      ['parts', 'damper', 'openings', 'windows', 'hole', 'window', 'width'],
      '101 mm',
    ])
    expect(outcome.ok ? [] : outcome.problems).toMatchObject([
      { code: 'opening.wider-than-can', value: '101 mm' },
    ])
  })

  test('the fuel lies on the grate where there is one', () => {
    const level = [['fuel', 'level'], '141.6 mm'] as const
    expect(told('heron', level)).toEqual([['fuel.above-can', 'fuel.level']])
    expect(changed('heron', level, [['assembly', 1, 'raised'], '30 mm']).ok).toBe(true)
  })

  test('a misspelt part is answered with its name', () => {
    const outcome = changed('redshank', [['assembly', 2, 'host'], 'shel'])
    expect(outcome.ok ? [] : outcome.problems).toMatchObject([{ fix: 'Was "shell" meant?' }])
  })

  test('a reader of stoves says what a file of another kind or age is', () => {
    expect(told('redshank', [['format'], 'tinwright/stove@12'])).toEqual([['format.newer', 'format']])
    expect(told('redshank', [['format'], 'tinwright/stove@0'])).toEqual([['format.unknown', 'format']])
    expect(told('redshank', [['format'], undefined])).toEqual([['format.missing', 'format']])
    expect(told('redshank', [['format'], 1])).toEqual([['format.unknown', 'format']])
    const list = readStove('[]')
    expect(list.ok ? [] : list.problems).toMatchObject([{ code: 'format.not-a-file', field: 'file' }])
  })
})
