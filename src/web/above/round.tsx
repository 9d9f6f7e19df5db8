import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from 'react'
import { wrapBearing } from '#stove/opening/row.ts'
import { useHeldTouch } from '../section/useHeldTouch.ts'
import { bearingOf } from './plan.ts'

/** The bearing under a pointer. */
const pointedBearing = (event: PointerEvent<SVGElement>): number => {
  const svg = (event.currentTarget.ownerSVGElement ?? event.currentTarget) as SVGSVGElement
  const box = svg.getBoundingClientRect()
  return bearingOf({
    x: event.clientX - box.left - box.width / 2,
    y: event.clientY - box.top - box.height / 2,
  })
}

const ARROWS: Readonly<Record<string, 1 | -1>> = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }

interface RoundProps {
  readonly name: string
  readonly words: string
  readonly bearing: number
  readonly small: number
  readonly large: number
  readonly className: string
  readonly onTurn: (bearing: number, done: boolean, from: Turning) => void
  readonly onAbandon: () => void
  readonly children: ReactNode
}

/** Where a turn began. */
export interface Turning {
  readonly bearing: number
  readonly grasped: number
}

/** Something that is turned round the stove, by a pointer or by the arrow keys. */
export const Round = ({
  name,
  words,
  bearing,
  small,
  large,
  className,
  onTurn,
  onAbandon,
  children,
}: RoundProps) => {
  const grasp = useHeldTouch()
  const held = useRef<(Turning & { readonly pointer: number }) | null>(null)
  const press = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && held.current !== null) {
      held.current = null
      onAbandon()
      return
    }
    const by = ARROWS[event.key]
    if (by === undefined) return
    const to = wrapBearing(bearing + by * (event.shiftKey ? large : small))
    onTurn(to, true, { bearing, grasped: bearing })
    event.preventDefault()
    event.stopPropagation()
  }
  const turned = (event: PointerEvent<SVGElement>, from: Turning): number =>
    wrapBearing(from.bearing + pointedBearing(event) - from.grasped)
  return (
    <g
      ref={grasp}
      className={className}
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={Math.round(bearing)}
      aria-valuetext={words}
      onKeyDown={press}
      onPointerDown={(event) => {
        if (event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        event.currentTarget.focus({ preventScroll: true })
        held.current = { pointer: event.pointerId, bearing, grasped: pointedBearing(event) }
      }}
      onPointerMove={(event) => {
        const from = held.current
        if (from?.pointer === event.pointerId) onTurn(turned(event, from), false, from)
      }}
      onPointerUp={(event) => {
        const from = held.current
        if (from?.pointer !== event.pointerId) return
        held.current = null
        onTurn(turned(event, from), true, from)
      }}
      onPointerCancel={() => {
        held.current = null
        onAbandon()
      }}
    >
      {children}
    </g>
  )
}
