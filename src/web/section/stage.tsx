import { type ReactNode, useCallback, useMemo, useRef, useState } from 'react'
import { orThrow } from '#basis/problem.ts'
import { pixelX, pixelY } from '#craft/section/frame.ts'
import { sectionGeometry } from '#craft/section/geometry.ts'
import type { Scene } from '#craft/section/scene.ts'
import type { OpeningRef } from '#stove/moves/move.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { useCell, useCellPart } from '../cell/useCell.ts'
import { units } from '../settings/settings.ts'
import type { StoveEditor } from '../stove/editor.ts'
import type { Before, Live, LiveStove } from '../stove/liveBurn.ts'
import { type Selection, sameRef } from '../stove/selection.ts'
import { Grip } from './grip.tsx'
import { handlesOf } from './handles.ts'
import { type StageLayout, stageLayout } from './layout.ts'
import { Picture } from './picture.tsx'
import { reachesOf } from './reach.ts'
import { Tag } from './tag.tsx'
import { type Size, useSize } from './useSize.ts'
import './stage.css'

const NO_PIECES = { pieces: () => [] }

/** Keeps the frame still while a hand moves something: only when it has come to rest the picture may change its scale. */
const useStageLayout = (
  size: Size | null,
  live: Live | null,
  before: Before | null,
  moving: boolean,
): StageLayout | null => {
  const kept = useRef<StageLayout | null>(null)
  return useMemo(() => {
    if (size === null || live === null) return null
    const last = kept.current
    if (moving && last !== null && last.width === size.width && last.height === size.height) return last
    const stoves = [live.stove, ...(before === null ? [] : [before.stove])]
    const laid = stageLayout(
      size.width,
      size.height,
      stoves.map((stove) => orThrow(sectionGeometry(stove, 0, NO_PIECES))),
    )
    // The same layout over again is the same picture.
    if (last !== null && JSON.stringify(last) === JSON.stringify(laid)) return last
    kept.current = laid
    return laid
  }, [size, live, before, moving])
}

interface GripsProps {
  readonly editor: StoveEditor
  readonly scene: Cell<Scene | null>
  readonly layout: StageLayout
  /** Pixels of the screen for one of the layout. */
  readonly zoom: number
  readonly selection: Selection
  readonly onOpen: (ref: OpeningRef | null) => void
}

const Grips = ({ editor, scene, layout, zoom, selection, onOpen }: GripsProps) => {
  const now = useCell(scene)
  const inUnits = useCell(units)
  const opened = useCell(selection.opened)
  const pointed = useCell(selection.pointed)
  /** Key of the handle that the hand is at, by pointer or by focus. */
  const [inHand, setInHand] = useState<string | null>(null)
  const handles = useMemo(() => (now === null ? [] : handlesOf(now, inUnits)), [now, inUnits])
  const { frame } = layout
  const places = handles.map(({ r, side, z }) => ({ x: pixelX(frame, r * side), y: pixelY(frame, z) }))
  const reaches = reachesOf(places)
  const held = handles.findIndex(({ key }) => key === inHand)
  const tagged = handles[held]
  return (
    <g className="grips">
      {handles.map((handle, i) => (
        <Grip
          key={handle.key}
          handle={handle}
          x={places[i]?.x ?? 0}
          y={places[i]?.y ?? 0}
          reach={reaches[i] ?? 0}
          scale={frame.scale * zoom}
          editor={editor}
          open={handle.ref !== null && sameRef(handle.ref, opened)}
          pointed={handle.ref !== null && sameRef(handle.ref, pointed)}
          onOpen={() => onOpen(sameRef(handle.ref, selection.opened.get()) ? null : handle.ref)}
          onPoint={(over) => {
            if (over) {
              selection.pointed.set(handle.ref)
              setInHand(handle.key)
              return
            }
            if (sameRef(selection.pointed.get(), handle.ref)) selection.pointed.set(null)
            setInHand((last) => (last === handle.key ? null : last))
          }}
        />
      ))}
      {tagged === undefined || (tagged.ref !== null && sameRef(tagged.ref, opened)) ? null : (
        <Tag
          handle={tagged}
          x={places[held]?.x ?? 0}
          y={places[held]?.y ?? 0}
          named={layout.words === null || tagged.ref === null}
          narrow={layout.words === null}
        />
      )}
    </g>
  )
}

interface StageProps {
  readonly editor: StoveEditor
  readonly stove: LiveStove
  readonly selection: Selection
  readonly onOpen: (ref: OpeningRef | null) => void
  /** What opens in place over the picture; told how far across the opened handle stands, and how large the picture is [px]. */
  readonly children?: (place: { readonly x: number; readonly height: number } | null) => ReactNode
}

/** The stove cut down its centre line, alive: what is changed, and what the air makes of it. */
export const Stage = ({ editor, stove, selection, onOpen, children }: StageProps) => {
  const { place, size, zoom } = useSize()
  const moving = useCellPart(editor.state, (state) => state.moving)
  const live = useCell(stove.live)
  const before = useCell(stove.before)
  const opened = useCell(selection.opened)
  const layout = useStageLayout(size, live, before, moving)
  const scene = useMemo(() => createCell<Scene | null>(null), [])
  const onScene = useCallback((drawn: Scene) => scene.set(drawn), [scene])
  const at = useMemo(() => {
    if (opened === null || layout === null || live === null) return null
    const drawn = scene.get()
    const handle = drawn === null ? undefined : handlesOf(drawn, 'mm').find(({ ref }) => sameRef(ref, opened))
    return handle === undefined
      ? null
      : {
          x: zoom * pixelX(layout.frame, handle.r * handle.side),
          height: zoom * layout.height,
        }
  }, [opened, layout, zoom, live, scene])
  return (
    <div className="stage" ref={place} data-moving={moving}>
      {layout === null ? null : (
        // biome-ignore lint/a11y/useKeyWithClickEvents: what its words open, the handles open by key
        // biome-ignore lint/a11y/useSemanticElements: a picture with handles in it is no set of fields
        <svg
          width={layout.width * zoom}
          height={layout.height * zoom}
          viewBox={`0 0 ${layout.width} ${layout.height}`}
          role="group"
          onClick={(event) => {
            // Words are a larger thing to hit than their hole; keys have the handle.
            const words = (event.target as Element).closest<SVGTextElement>('text[data-opening]')
            const { part, opening } = words?.dataset ?? {}
            if (part !== undefined && opening !== undefined) onOpen({ part, opening })
          }}
          aria-label={`${live?.stove.name ?? 'The stove'} cut down its centre line`}
        >
          <Picture live={stove.live} before={stove.before} layout={layout} onScene={onScene} />
          <Grips
            editor={editor}
            scene={scene}
            layout={layout}
            zoom={zoom}
            selection={selection}
            onOpen={onOpen}
          />
        </svg>
      )}
      {children?.(at)}
    </div>
  )
}
