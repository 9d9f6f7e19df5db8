import type { Problem } from '#basis/problem.ts'

/** What a path of the trial file is called on the page. */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/^name$/, 'a name for the burn'],
  [/^day$/, 'the day'],
  [/^start$/, 'whether the stove was cold or hot'],
  [/^stove\.name$/, 'the stove'],
  [/^fuel\.kind$/, 'the fuel'],
  [/^fuel\.moisture$/, 'the moisture of the fuel'],
  [/^fuel\.moisture\.before$/, 'the sample before drying'],
  [/^fuel\.moisture\.after$/, 'the sample after drying'],
  [/^weather\.temperature$/, 'the air temperature'],
  [/^weather\.pressure$/, 'where water boils there (boiling point, pressure or height)'],
  [/^pot\.weight$/, 'the empty pot’s weight'],
  [/^pot\.lid$/, 'whether a lid was on'],
  [/^instruments\.scale\.resolution$/, 'the smallest step of the scale'],
  [/^instruments\.thermometer\.resolution$/, 'the smallest step of the thermometer'],
  [/^instruments\.clock\.resolution$/, 'the smallest step of the clock'],
  [/^instruments\.moistureMeter/, 'how far the moisture meter may be off'],
  [/^phases\[(\d)\]\.(from|to)\.at$/, 'the time'],
  [/^phases\[(\d)\]\.(from|to)\.fuel$/, 'the fuel not yet burnt'],
  [/^phases\[(\d)\]\.(from|to)\.pot$/, 'the pot with water'],
  [/^phases\[(\d)\]\.(from|to)\.water$/, 'the temperature of the water'],
]

/** `the fuel not yet burnt at the end` for `phases[0].to.fuel`; the path itself where it has no words. */
const wordsFor = (field: string): string => {
  for (const [form, words] of WORDS) {
    const found = form.exec(field)
    if (found === null) continue
    const side = found[2] === undefined ? '' : found[2] === 'from' ? ' at the start' : ' at the end'
    return `${words}${side}${found[1] === undefined || found[1] === '0' ? '' : ' of the simmer'}`
  }
  return field
}

/** What is missing before anything can be worked out, and what will not do. */
export const StillToSay = ({
  missing,
  wrong,
}: {
  readonly missing: readonly Problem[]
  readonly wrong: readonly Problem[]
}) => {
  const elsewhere = wrong.filter(({ field }) => /^(?:events|masses)|^file$/.test(field))
  if (missing.length === 0 && wrong.length === 0) return null
  return (
    <section className="still" aria-labelledby="still">
      <h2 id="still">Before anything can be worked out</h2>
      {missing.length > 0 && (
        <p>Still to say: {[...new Set(missing.map(({ field }) => wordsFor(field)))].join('; ')}.</p>
      )}
      {wrong.length > 0 && (
        <ul>
          {wrong.map(({ field, value, allowed, fix, code }) => (
            <li key={`${code} ${field}`}>
              {wordsFor(field)}: {value === '' ? 'missing' : `${value} will not do`}; allowed is {allowed}.{' '}
              {fix}
            </li>
          ))}
        </ul>
      )}
      {elsewhere.length > 0 && <p className="small">Put the entry right in the log below.</p>}
    </section>
  )
}
