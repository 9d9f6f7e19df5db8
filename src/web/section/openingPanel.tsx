import { useEffect, useRef, useState } from 'react'
import { problemSentence } from '#basis/problem.ts'
import { readLength } from '#basis/text/length.ts'
import type { Duty } from '#stove/model.ts'
import {
  bendVanes,
  countPattern,
  countVanes,
  patternCounts,
  setBore,
  stepBore,
  stepPitch,
} from '#stove/moves/face.ts'
import { sizeHole, sizesOf, stepHole } from '#stove/moves/hole.ts'
import { type Move, type OpeningRef, openingIn, withOpening } from '#stove/moves/move.ts'
import { countRow, rowOf, stepRow, toggleLeftOut, turnRow } from '#stove/moves/row.ts'
import { removeOpening, setDuty } from '#stove/moves/rows.ts'
import { useCell } from '../cell/useCell.ts'
import { attempt } from '../stove/attempt.ts'
import type { StoveEditor } from '../stove/editor.ts'
import { BitField } from './bitField.tsx'
import { Stepper } from './stepper.tsx'
import './openingPanel.css'

const DUTIES: readonly (readonly [Duty, string])[] = [
  ['intake', 'intake: all the air'],
  ['primary', 'primary: through the fuel'],
  ['secondary', 'secondary: into the gas'],
  ['tertiary', 'tertiary: into the flame'],
  ['outlet', 'outlet: flue gas out'],
  ['passage', 'passage: gas through'],
  ['fixing', 'fixing: screw or wire'],
]

interface PanelProps {
  readonly editor: StoveEditor
  readonly opening: OpeningRef
  readonly onClose: () => void
}

type Try = (move: Move | null) => void

const RowFields = ({ editor, opening: ref, tryMove }: PanelProps & { readonly tryMove: Try }) => {
  const { file, stove } = useCell(editor.state)
  const written = openingIn(file, ref)
  const row = rowOf(stove, ref)
  if (written?.kind !== 'row' || row === null) return null
  const typedHeight = (text: string): string | null => {
    const read = readLength(text, 'height', 'holeHeight')
    if (!read.ok) return read.problems.map(problemSentence).join(' ')
    // As it was typed: the maker's own hand.
    return attempt(editor, {
      label: `move ${ref.opening} to ${text.trim()}`,
      change: (to) => withOpening(to, ref, 'row', (one) => ({ ...one, height: text.trim() })),
    })
  }
  return (
    <>
      <Stepper
        name="Places"
        text={String(written.count)}
        onLess={written.count <= 1 ? null : () => tryMove(countRow(file, ref, written.count - 1))}
        onMore={() => tryMove(countRow(file, ref, written.count + 1))}
        onText={(text) =>
          /^\d+$/.test(text.trim())
            ? attempt(editor, countRow(file, ref, Number(text)))
            : 'Write a whole number of places.'
        }
      />
      <Stepper
        name={`Middle, from the ${written.from ?? 'bottom'}`}
        text={written.height}
        onLess={() => tryMove(stepRow(stove, file, ref, written.from === 'top' ? 1 : -1))}
        onMore={() => tryMove(stepRow(stove, file, ref, written.from === 'top' ? -1 : 1))}
        onText={typedHeight}
      />
      <Stepper
        name="Bearing of place 1"
        text={`${Math.round(row.bearing)}°`}
        onLess={() => tryMove(turnRow(file, ref, row.bearing - 5))}
        onMore={() => tryMove(turnRow(file, ref, row.bearing + 5))}
      />
      <fieldset className="places">
        <legend>Drilled places</legend>
        {Array.from({ length: written.count }, (_, i) => i + 1).map((position) => {
          const out = written.leftOut?.includes(position) === true
          return (
            <button
              key={position}
              type="button"
              aria-pressed={!out}
              aria-label={`Place ${position}`}
              onClick={() => tryMove(toggleLeftOut(file, ref, position))}
            >
              {position}
            </button>
          )
        })}
      </fieldset>
    </>
  )
}

const HoleFields = ({ editor, opening: ref, tryMove }: PanelProps & { readonly tryMove: Try }) => {
  const { file, stove } = useCell(editor.state)
  const written = openingIn(file, ref)
  const read = stove.parts.get(ref.part)?.openings.get(ref.opening)
  if (written?.kind !== 'row' && written?.kind !== 'pattern') return null
  const { hole } = written
  const diameter =
    read?.kind === 'row'
      ? read.hole.shape === 'round'
        ? read.hole.diameter
        : null
      : read?.kind === 'pattern'
        ? read.diameter
        : null
  if ('bit' in hole && diameter !== null)
    return <BitField editor={editor} opening={ref} name={hole.bit} diameter={diameter} tryMove={tryMove} />
  return sizesOf(file, ref).map((size) => {
    const text =
      'diameter' in hole
        ? hole.diameter
        : 'window' in hole
          ? size === 'window width'
            ? hole.window.width
            : hole.window.height
          : 'slit' in hole
            ? size === 'slit length'
              ? hole.slit.length
              : hole.slit.width
            : ''
    return (
      <Stepper
        key={size}
        name={size.charAt(0).toUpperCase() + size.slice(1)}
        text={text}
        onLess={() => tryMove(stepHole(file, ref, size, -1))}
        onMore={() => tryMove(stepHole(file, ref, size, 1))}
        onText={(typed) => {
          const length = readLength(typed, size, 'clearance')
          return length.ok
            ? attempt(editor, sizeHole(file, ref, size, length.value))
            : length.problems.map(problemSentence).join(' ')
        }}
      />
    )
  })
}

const FaceFields = ({ editor, opening: ref, tryMove }: PanelProps & { readonly tryMove: Try }) => {
  const { file } = useCell(editor.state)
  const written = openingIn(file, ref)
  switch (written?.kind) {
    case 'bore':
      return (
        <Stepper
          name="Diameter"
          text={written.diameter}
          onLess={() => tryMove(stepBore(file, ref, -1))}
          onMore={() => tryMove(stepBore(file, ref, 1))}
          onText={(typed) => {
            const length = readLength(typed, 'diameter', 'boreDiameter')
            return length.ok
              ? attempt(editor, setBore(file, ref, length.value))
              : length.problems.map(problemSentence).join(' ')
          }}
        />
      )
    case 'pattern':
      return (
        <>
          {patternCounts(written).map(({ ring, count, name }) => (
            <Stepper
              key={name}
              name={`Holes${ring === null ? '' : `, ${name}`}`}
              text={String(count)}
              onLess={count <= 1 ? null : () => tryMove(countPattern(file, ref, ring, count - 1))}
              onMore={() => tryMove(countPattern(file, ref, ring, count + 1))}
            />
          ))}
          {'rings' in written.layout || patternCounts(written).length > 0 ? null : (
            <Stepper
              name="Pitch"
              text={
                ('hexagonal' in written.layout ? written.layout.hexagonal : written.layout.sunflower).pitch ??
                ''
              }
              onLess={() => tryMove(stepPitch(file, ref, -1))}
              onMore={() => tryMove(stepPitch(file, ref, 1))}
            />
          )}
        </>
      )
    case 'vanes': {
      const angle = Number.parseFloat(written.angle)
      return (
        <>
          <Stepper
            name="Vanes"
            text={String(written.count)}
            onLess={() => tryMove(countVanes(file, ref, written.count - 1))}
            onMore={() => tryMove(countVanes(file, ref, written.count + 1))}
          />
          <Stepper
            name={`Bent ${written.bend ?? 'up'} by`}
            text={`${angle}°`}
            onLess={() => tryMove(bendVanes(file, ref, angle - 5))}
            onMore={() => tryMove(bendVanes(file, ref, angle + 5))}
          />
        </>
      )
    }
    default:
      return null
  }
}

/** What of one opening can be changed without leaving the picture. */
export const OpeningPanel = (props: PanelProps) => {
  const { editor, opening: ref, onClose } = props
  const { file } = useCell(editor.state)
  const [fault, setFault] = useState<string | null>(null)
  const panel = useRef<HTMLElement>(null)
  const written = openingIn(file, ref)
  const tryMove: Try = (move) => setFault(attempt(editor, move))
  const gone = written === undefined
  // Whoever works by keyboard goes on in the panel, and comes back to the handle.
  useEffect(() => {
    const from = document.activeElement
    panel.current?.focus({ preventScroll: true })
    panel.current?.scrollIntoView({ block: 'nearest' })
    return () => {
      const is = from instanceof SVGElement || from instanceof HTMLElement
      if (is && from !== document.body && from.isConnected) from.focus({ preventScroll: true })
    }
  }, [])
  useEffect(() => {
    if (gone) onClose()
  }, [gone, onClose])
  // biome-ignore lint/correctness/useExhaustiveDependencies: another opening begins without the fault of the last
  useEffect(() => setFault(null), [ref.part, ref.opening])
  if (gone) return null
  return (
    <section
      ref={panel}
      tabIndex={-1}
      className="opening-panel"
      aria-label={`${ref.opening} in ${ref.part}`}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        onClose()
      }}
    >
      <div className="opening-head">
        <h2>
          {ref.opening} <span className="muted">in {ref.part}</span>
        </h2>
        <button type="button" data-weight="quiet" onClick={onClose}>
          Close
        </button>
      </div>
      <HoleFields {...props} tryMove={tryMove} />
      <RowFields {...props} tryMove={tryMove} />
      <FaceFields {...props} tryMove={tryMove} />
      {fault === null ? null : (
        <p className="stepper-fault small" role="alert">
          {fault}
        </p>
      )}
      <label className="opening-duty">
        What it is for
        <select value={written.duty} onChange={(event) => tryMove(setDuty(ref, event.target.value as Duty))}>
          {DUTIES.map(([duty, words]) => (
            <option key={duty} value={duty}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <button
        type="button"
        data-weight="quiet"
        className="opening-remove"
        onClick={() => tryMove(removeOpening(ref))}
      >
        Take {ref.opening} away
      </button>
    </section>
  )
}
