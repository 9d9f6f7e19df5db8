import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { orThrow, problemSentence } from '#basis/problem.ts'
import { readBuilt } from '#stove/built/read.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import { exampleNamed } from '../document/examples.ts'

/** As-built files of `test/bad-built`, each a good one for Redshank with one thing spoilt, and what must be told. */
const INTAKE = 'parts.shell.openings.intake'
const expected: Readonly<Record<string, readonly [code: string, field: string, said: RegExp]>> = {
  'a-stove-file': ['format.other-kind', 'format', /a built file was asked for/],
  'another-stove': ['built.other-stove', 'stove', /"Redshank"/],
  'bare-number': ['length.no-unit', `${INTAKE}.height`, /22 mm/],
  'confirmed-unknown': ['built.confirmed-unknown', 'confirmed[0]', /Was ".*intake\.diameter" meant/],
  'count-in-quotes': ['count.in-quotes', `${INTAKE}.count`, /without quotation marks/],
  'cut-short': ['json.cut-short', 'line 21, column 16', /./],
  'decimal-slip': ['built.far-off-plan', `${INTAKE}.diameter`, /decimal point slip\? Did you mean 12/],
  'does-not-add-up': ['vanes.outside', 'parts.concentrator.openings.vanes.outerRadius', /measure again/i],
  'dual-mismatch': ['length.dual-mismatch', 'parts.concentrator.openings.bore.diameter[0]', /1 5\/8 in/],
  'far-off': ['built.far-off-plan', `${INTAKE}.diameter`, /within 1\.8 mm .*of the plan, 12 mm.*"confirmed"/],
  'inches-as-millimetres': ['length.range', 'parts.shell.height', /5 7\/8 in was meant/],
  'left-out-alone': ['built.left-out-alone', `${INTAKE}.leftOut`, /how many openings/],
  'left-out-places': ['built.left-out-places', `${INTAKE}.leftOut`, /places from 1 to 13/],
  negative: ['mass.range', 'parts.shell.weight', /minus sign/],
  'newer-format': ['format.newer', 'format', /update Tinwright/],
  'no-name': ['words.not-text', 'stove', /text of at most 80/],
  'no-unit': ['length.no-unit', `${INTAKE}.diameter[0]`, /12\.3 mm/],
  'not-measured-here': [
    'built.not-measured-here',
    'parts.concentrator.openings.bore.angle',
    /of bore only "diameter"/,
  ],
  'one-reading-no-list': ['type.wrong', `${INTAKE}.diameter`, /a list in brackets/],
  'other-edge': ['built.far-off-plan', 'parts.fuel can.openings.ring.height', /from the other edge/],
  'other-form': ['built.not-measured-here', 'parts.concentrator.bodyDiameter', /"diameter", "weight"/],
  'unknown-key': ['key.unknown', `${INTAKE}.heigth`, /Was "height" meant/],
  'unknown-opening': ['built.unknown-opening', 'parts.shell.openings.intakes', /Was "intake" meant/],
  'unknown-part': ['built.unknown-part', 'parts.fuelcan', /Was "fuel can" meant/],
  'which-left-out': ['built.which-left-out', `${INTAKE}.leftOut`, /plan has 11 openings and 12 were counted/],
}

const folder = fileURLToPath(new URL('../../bad-built/', import.meta.url))
const plan = orThrow(readStoveDocument(exampleNamed('redshank').text))

test('every bad file is in the table, and every row of the table has its file', () => {
  expect(readdirSync(folder).sort()).toEqual(
    Object.keys(expected)
      .map((name) => `${name}.txt`)
      .sort(),
  )
})

test.each(Object.entries(expected))('%s', (name, [code, field, said]) => {
  const outcome = readBuilt(readFileSync(`${folder}${name}.txt`, 'utf8'), plan)
  if (outcome.ok) throw new Error('was taken for a good sheet')
  const [first, ...more] = outcome.problems
  expect(more).toEqual([])
  expect(first).toMatchObject({ code, field })
  const sentence = first === undefined ? '' : problemSentence(first)
  expect(sentence).toMatch(said)
  expect(sentence).toMatch(/[.?!]$/)
  expect(sentence).not.toMatch(/undefined|NaN m|Infinity|\[object/)
})
