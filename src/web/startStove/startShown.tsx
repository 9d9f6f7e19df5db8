import { useCell } from '../cell/useCell.ts'
import { ScopedSvg } from '../plan/scopedSvg.tsx'
import { lengthIn } from '../settings/inUnits.ts'
import { theme, units } from '../settings/settings.ts'
import { burnSentence } from './burnSentence.ts'
import { startLines } from './startLines.ts'
import type { StartShown as Started } from './work.ts'

/** A stove as it was laid out from the cans: its picture, how it burns, what is to be cut. */
export const StartShown = ({ shown }: { readonly shown: Started }) => {
  const dark = useCell(theme) === 'dark'
  const inUnits = useCell(units)
  const { started, pictures } = shown
  if (started.kind === 'cannot') return <p className="start-said">{started.sentence}</p>
  const warns = started.findings.filter(({ severity }) => severity === 'warn')
  const { holding, floor } = started.start.way
  return (
    <div className="start-shown">
      {pictures === null ? null : (
        <ScopedSvg svg={dark ? pictures.dark : pictures.light} className="start-picture" />
      )}
      <div>
        <p className={started.burn.clean ? 'start-good' : 'start-said'}>
          {burnSentence(started.burn, inUnits)}
        </p>
        <p>
          The fuel can is held {holding}; the fuel lies on{' '}
          {floor === 'its own' ? 'its own drilled floor' : floor}.
        </p>
        <ul>
          {startLines(started.file, (length) => lengthIn(length, inUnits)).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        {warns.map((finding) => (
          <p key={finding.sentence} className="start-said">
            {finding.sentence} {finding.fix}
          </p>
        ))}
        <p className="muted small">
          A prediction, no measurement. Openings are sized by area: change anything once it lies on the bench.
        </p>
      </div>
    </div>
  )
}
