import { memo, useEffect, useLayoutEffect, useMemo, useRef } from 'react'
import type { CutBed } from '#craft/section/bed.ts'
import { rememberPieces } from '#craft/section/rememberPieces.ts'
import { momentScene, type Scene } from '#craft/section/scene.ts'
import { darkTheme, lightTheme, type Theme } from '#craft/section/theme.ts'
import type { Cell } from '../cell/cell.ts'
import { useCell } from '../cell/useCell.ts'
import { theme, units } from '../settings/settings.ts'
import type { Before, Live } from '../stove/liveBurn.ts'
import type { StageLayout } from './layout.ts'
import { momentOn } from './moment.ts'
import { paintBed, paintBehind, paintFront, paintGhost, paintGround, paintLabels, sameBed } from './paint.ts'

const LAYERS = ['ground', 'behind', 'ghost', 'bed', 'front', 'words'] as const
type Layer = (typeof LAYERS)[number]

/** A layer of the picture that is only touched when what it shows has changed. */
const createLayers = (at: (layer: Layer) => SVGGElement | null) => {
  const shown = new Map<Layer, string>()
  return (layer: Layer, svg: string): void => {
    const place = at(layer)
    if (place === null || shown.get(layer) === svg) return
    shown.set(layer, svg)
    place.innerHTML = svg
  }
}

const sceneAt = (lay: ReturnType<typeof rememberPieces>, live: Live): Scene => {
  const { state, charShare } = momentOn(live)
  return momentScene(live.stove, state, { pieces: lay, charShare })
}

interface PictureProps {
  readonly live: Cell<Live | null>
  readonly before: Cell<Before | null>
  readonly layout: StageLayout
  /** Told of every scene as it is drawn, for what lies over the picture. */
  readonly onScene: (scene: Scene) => void
}

/**
 * The section as it is drawn: strings from the pure rooms set into layers, past React, which would compare hundreds of paths
 * sixty times a second.
 */
export const Picture = memo(({ live, before, layout, onScene }: PictureProps) => {
  const root = useRef<SVGGElement>(null)
  const lay = useMemo(rememberPieces, [])
  const look = useCell(theme)
  const inUnits = useCell(units)
  const paint = useMemo(
    () => createLayers((layer) => root.current?.querySelector<SVGGElement>(`.stage-${layer}`) ?? null),
    [],
  )
  const painted = useRef<{
    bed: CutBed | null
    frame: StageLayout['frame'] | null
    theme: Theme | null
    top: number
  }>({
    bed: null,
    frame: null,
    theme: null,
    top: 0,
  })

  useLayoutEffect(() => {
    const colours = look === 'dark' ? darkTheme : lightTheme
    const { frame } = layout
    const draw = (): void => {
      const now = live.get()
      if (now === null) return
      const scene = sceneAt(lay, now)
      const last = painted.current
      const anew = last.frame !== frame || last.theme !== colours
      const { bed, top } = scene.section
      if (anew || last.top !== top) paint('ground', paintGround(colours, layout, top))
      if (anew || !sameBed(last.bed, bed)) paint('bed', paintBed(colours, frame, bed))
      paint('behind', paintBehind(colours, frame, scene))
      paint('front', paintFront(colours, frame, scene, momentOn(now)))
      paint('words', paintLabels(colours, layout, scene, inUnits))
      painted.current = { bed, frame, theme: colours, top }
      onScene(scene)
    }
    if (painted.current.frame !== null) {
      draw()
      return live.subscribe(draw)
    }
    // The first picture comes in two halves, so that a page that comes up is never deaf for long: fuel is laid out, then all is drawn.
    let next = setTimeout(() => {
      const now = live.get()
      if (now !== null) sceneAt(lay, now)
      next = setTimeout(draw, 0)
    }, 0)
    const stop = live.subscribe(draw)
    return () => {
      clearTimeout(next)
      stop()
    }
  }, [live, layout, look, inUnits, lay, paint, onScene])

  useEffect(() => {
    const colours = look === 'dark' ? darkTheme : lightTheme
    const draw = (): void => {
      const parent = before.get()
      paint(
        'ghost',
        parent === null
          ? ''
          : paintGhost(colours, layout.frame, momentScene(parent.stove, parent.moment, { pieces: () => [] })),
      )
    }
    draw()
    return before.subscribe(draw)
  }, [before, layout, look, paint])

  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of an SVG takes no focus
    <g ref={root} aria-hidden="true">
      {LAYERS.map((layer) => (
        <g key={layer} className={`stage-${layer}`} />
      ))}
    </g>
  )
})
