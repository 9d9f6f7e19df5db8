import { describe, expect, it } from 'vitest'
import type { JsonValue } from '#stove/document/json.ts'
import { EMPTY_LOG } from '#web/atStove/entry.ts'
import {
  at,
  changed,
  draftFrom,
  emptyDraft,
  fieldOf,
  textOf,
  trialSoFar,
  wholeFile,
} from '#web/trials/draft.ts'
import { waterBoilingTrial } from '../../proof/trial/waterBoiling.ts'

describe('a trial while it is filled in', () => {
  it('asks field by field for what is missing, and calls nothing of it wrong', () => {
    const { trial, missing, wrong } = trialSoFar(emptyDraft(), EMPTY_LOG)
    expect(trial).toBeNull()
    expect(wrong).toEqual([])
    expect(missing.map(({ field }) => field)).toEqual(
      expect.arrayContaining([
        'name',
        'day',
        'fuel.kind',
        'pot.weight',
        'phases[0].from.at',
        'phases[0].to.water',
      ]),
    )
  })

  it('tells what will not do by the path its blank has', () => {
    const draft = changed(emptyDraft(), ['weather', 'temperature'], '18')
    const [wrong] = trialSoFar(draft, EMPTY_LOG).wrong
    expect(wrong?.field).toBe(fieldOf(['weather', 'temperature']))
    expect(wrong?.fix).toContain('18 °C or 18 °F')
    expect(fieldOf(['phases', 1, 'from', 'pot'])).toBe('phases[1].from.pot')
  })

  it('is a trial when all is told, its log among it', () => {
    const { events, ...rest } = waterBoilingTrial()
    const draft = draftFrom(JSON.stringify(rest))
    if (draft === null) throw new Error('Not read')
    const { trial } = trialSoFar(draft, { events: events as never, masses: [] })
    expect(trial?.events.map(({ event }) => event)).toEqual(['lit', 'boil'])
    expect(wholeFile(draft, { events: events as never, masses: [] }).events).toEqual(events)
  })

  it('keeps the words of a half-told trial as they are written', () => {
    const draft = changed(emptyDraft(), ['pot', 'weight'], '14.5 oz')
    expect(at(draftFrom(textOf(draft)) as JsonValue, ['pot', 'weight'])).toBe('14.5 oz')
  })

  it('is no trial when the text is of something else', () => {
    expect(draftFrom('{"format":"tinwright/stove@1"}')).toBeNull()
    expect(draftFrom('no json')).toBeNull()
  })

  it('changes one place and touches nothing else', () => {
    const before = emptyDraft()
    const text = JSON.stringify(before)
    const after = changed(before, ['wentWrong', 0], 'spilled')
    expect(at(after, ['wentWrong'])).toEqual(['spilled'])
    expect(at(changed(after, ['wentWrong', 0], undefined), ['wentWrong'])).toEqual([])
    expect(at(changed(after, ['wentWrong'], undefined), ['wentWrong'])).toBeUndefined()
    expect(JSON.stringify(before)).toBe(text)
  })
})
