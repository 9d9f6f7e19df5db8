import { useCallback, useEffect, useId, useMemo, useState } from 'react'
import { STOVE_NAME_MOST } from '#stove/document/names.ts'
import { readPotItem } from '#stove/document/shelfItem.ts'
import type { ShelfCan, StartChoice } from '#stove/start/choice.ts'
import { useCell } from '../cell/useCell.ts'
import { fuelChoice, fuelChoices } from '../fuel/fuelChoices.ts'
import { planHand } from '../plan/useMaking.ts'
import { Link } from '../routes/link.tsx'
import { lengthIn } from '../settings/inUnits.ts'
import { units } from '../settings/settings.ts'
import { shelfItems } from '../shelf/items.ts'
import { shelfOf } from '../shelf/shelfOf.ts'
import { layOnBench } from './newStove.ts'
import { shelfCans } from './shelfCans.ts'
import { StartShown } from './startShown.tsx'
import { startWish } from './wish.ts'
import type { StartShown as Shown } from './work.ts'

const ASIDE = '(none)'

interface State {
  readonly shown: Shown | null
  readonly busy: boolean
  readonly sentence: string | null
}

const useStart = (choice: StartChoice | null): State => {
  const [state, setState] = useState<State>({ shown: null, busy: false, sentence: null })
  useEffect(() => {
    if (choice === null) {
      setState({ shown: null, busy: false, sentence: null })
      return
    }
    const abort = new AbortController()
    setState((before) => ({ ...before, busy: true }))
    const wait = setTimeout(async () => {
      const outcome = await planHand().run('start', choice, { signal: abort.signal })
      if (outcome.kind === 'done') setState({ shown: outcome.done, busy: false, sentence: null })
      else if (outcome.kind === 'failed') setState({ shown: null, busy: false, sentence: outcome.sentence })
    }, 150)
    return () => {
      clearTimeout(wait)
      abort.abort()
    }
  }, [choice])
  return state
}

interface PickProps {
  readonly label: string
  readonly value: string
  readonly names: readonly (readonly [value: string, words: string])[]
  /** Said below it, for what has no room in the list. */
  readonly hint?: string
  readonly onPick: (value: string) => void
}

const Pick = ({ label, value, names, hint, onPick }: PickProps) => {
  const id = useId()
  return (
    <div className="start-pick">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => onPick(event.target.value)}
      >
        {names.map(([key, words]) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
      </select>
      {hint === undefined ? null : (
        <p id={`${id}-hint`} className="muted small">
          {hint}
        </p>
      )}
    </div>
  )
}

/** A stove from two cans of the shelf: which stands outside, which holds the fuel, and what goes with them. */
export const FromTwoCans = () => {
  const { items, loading } = useCell(shelfItems)
  const inUnits = useCell(units)
  const long = (length: number): string => lengthIn(length, inUnits)
  const wish = useCell(startWish)
  const [name, setName] = useState('')
  const [stand, setStand] = useState(ASIDE)
  const [damper, setDamper] = useState(true)
  const [vanes, setVanes] = useState(false)
  const [fuel, setFuel] = useState('wood-chips')
  const [pot, setPot] = useState(ASIDE)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [laying, setLaying] = useState(false)
  const cans = useMemo(() => shelfCans(items), [items])
  const { bits } = useMemo(() => shelfOf(items), [items])
  const pots = useMemo(
    () =>
      items.flatMap((item) => {
        if (item.kind !== 'pot' || item.value === null) return []
        const read = readPotItem(item.value)
        return read.ok ? [{ name: item.name, diameter: read.value.diameter }] : []
      }),
    [items],
  )
  const of = useCallback((wanted: string) => cans.find((can) => can.name === wanted) ?? null, [cans])
  const [outer, inner] = [of(wish.outer), of(wish.inner)]
  // A can that is in the stove already cannot carry the pot as well.
  const standing = stand === wish.outer || stand === wish.inner ? ASIDE : stand
  const suggested = outer === null || inner === null ? '' : `${outer.name} and ${inner.name}`.slice(0, 80)

  const choice = useMemo<StartChoice | null>(
    () =>
      outer === null || inner === null || outer === inner
        ? null
        : {
            name: name.trim() === '' ? suggested : name.trim(),
            outer,
            inner,
            potStand: of(standing),
            damper,
            vanes,
            bits,
            fuel,
            potDiameter: pots.find((one) => one.name === pot)?.diameter ?? null,
          },
    [name, suggested, outer, inner, of, standing, damper, vanes, bits, fuel, pots, pot],
  )
  const { shown, busy, sentence } = useStart(choice)

  if (loading) return <p role="status">Looking on the shelf …</p>
  if (cans.length < 2)
    return (
      <p>
        {cans.length === 0 ? 'There is no can on the shelf.' : 'There is one can on the shelf; it takes two.'}{' '}
        <Link to={{ at: 'shelf' }}>Measure {cans.length === 0 ? 'two cans' : 'another'} first</Link>.
      </p>
    )
  const sizes = (can: ShelfCan | null): string =>
    can === null
      ? ''
      : `${long(can.can.seamDiameter.value)} over the seam, ${long(can.can.height.value)} high.`
  const listed = cans.map(({ name, can: { seamDiameter, height } }) => {
    // In a list there is room for one unit; both stand below it.
    const short = (length: number): string => lengthIn(length, inUnits === 'both' ? 'mm' : inUnits)
    return [name, `${name}, ${short(seamDiameter.value)} by ${short(height.value)}`] as const
  })
  const started = shown?.started.kind === 'started' ? shown.started : null
  return (
    <form
      className="start-form"
      onSubmit={(event) => {
        event.preventDefault()
        if (started === null || busy) return
        setLaying(true)
        void layOnBench(started.file, `Started from ${wish.outer} and ${wish.inner} of the shelf.`).then(
          (said) => {
            setLaying(false)
            setRefusal(said)
          },
        )
      }}
    >
      <div className="start-choices">
        <Pick
          label="Outside"
          value={wish.outer}
          names={[['', 'choose a can …'], ...listed]}
          hint={sizes(outer)}
          onPick={(value) => startWish.update((before) => ({ ...before, outer: value }))}
        />
        <Pick
          label="Inside it, for the fuel"
          value={wish.inner}
          names={[['', 'choose a can …'], ...listed]}
          hint={sizes(inner)}
          onPick={(value) => startWish.update((before) => ({ ...before, inner: value }))}
        />
        <Pick
          label="Pot stand"
          value={standing}
          names={[
            [ASIDE, 'none: the pot stands on screws'],
            ...listed.filter(([can]) => can !== wish.outer && can !== wish.inner),
          ]}
          hint={standing === ASIDE ? '' : sizes(of(standing))}
          onPick={setStand}
        />
        <Pick
          label="Concentrator"
          value={vanes ? 'vanes' : 'bore'}
          names={[
            ['bore', 'a plain bore'],
            ['vanes', 'a bore, and slits bent into vanes'],
          ]}
          hint={
            vanes
              ? 'Vanes make the flame whirl, and take a while to cut and bend.'
              : 'One round hole: quick to cut.'
          }
          onPick={(value) => setVanes(value === 'vanes')}
        />
        <label className="start-tick">
          <input type="checkbox" checked={damper} onChange={(event) => setDamper(event.target.checked)} />A
          damper: a band that turns over the intake
        </label>
        <Pick
          label="Fuel"
          value={fuel}
          names={fuelChoices.map(({ key, name: words }) => [key, words] as const)}
          hint={fuelChoice(fuel)?.pieces ?? ''}
          onPick={setFuel}
        />
        <Pick
          label="Pot"
          value={pot}
          names={[
            [ASIDE, 'one that suits the cans'],
            ...pots.map((one) => [one.name, `${one.name}, ${long(one.diameter)}`] as const),
          ]}
          onPick={setPot}
        />
        <label className="start-pick">
          Name
          <input
            value={name}
            placeholder={suggested}
            maxLength={STOVE_NAME_MOST}
            onChange={(event) => setName(event.target.value)}
          />
        </label>
      </div>
      <div className="start-result" aria-live="polite" aria-busy={busy}>
        {outer !== null && outer === inner ? (
          <p className="start-said">A can cannot stand in itself: choose two.</p>
        ) : choice === null ? (
          <p className="muted">Choose two cans, and a stove of them is laid out here.</p>
        ) : sentence !== null ? (
          <p className="start-said">{sentence}</p>
        ) : shown === null ? (
          <p className="muted">Laying it out …</p>
        ) : (
          <StartShown shown={shown} />
        )}
        {refusal === null ? null : <p className="start-said">{refusal}</p>}
        <button type="submit" data-weight="main" disabled={started === null || busy || laying}>
          Lay it on the bench
        </button>
      </div>
    </form>
  )
}
