import { describe, expect, test } from 'vitest'
import { wholeProps, wholeText } from '#web/wholeValues/wholeText.ts'

/** What a line may not end in, seen: `_`. */
const seen = (text: string): string => wholeText(text).replaceAll('\u00a0', '_')

describe('a value on the page', () => {
  test('holds together with its unit and its bracket', () => {
    expect(seen('the bore of 149 mm (5 7/8 in) is wide')).toBe('the bore of 149_mm_(5_7/8_in) is wide')
    expect(seen('5 7/8 in across, 1160 °C (2120 °F)')).toBe('5_7/8_in across, 1160_°C_(2120_°F)')
    expect(seen('wood gas for 1 h 12 min on 730 g')).toBe('wood gas for 1_h_12_min on 730_g')
  })

  test('is parted before its bracket where it is long', () => {
    expect(seen('6 of 18 × 22 mm (45/64 × 55/64 in) each')).toBe('6 of 18_×_22_mm (45/64_×_55/64_in) each')
  })

  test('of an element is made whole; what a component or a maker reads back is left alone', () => {
    const props = { className: 'x', children: ['at ', '20 °C', null, 3] }
    expect(wholeProps('p', props)).toEqual({ className: 'x', children: ['at ', '20\u00a0°C', null, 3] })
    expect(wholeProps('p', { children: '8 mm' })).toEqual({ children: '8\u00a0mm' })
    for (const type of ['textarea', 'option', () => null]) expect(wholeProps(type, props)).toBe(props)
  })
})
