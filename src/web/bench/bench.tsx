import { type ComponentType, Suspense, useCallback, useEffect, useRef, useState } from 'react'
import { useCell } from '../cell/useCell.ts'
import { Guide } from '../firstRun/guide.tsx'
import { here } from '../routes/here.ts'
import { type Place, pathOf } from '../routes/routes.ts'
import { headOfEither, revisionsSeen } from '../workshop/revisions.ts'
import { documents } from '../workshop/workshop.ts'
import { FootBar, Header } from './header.tsx'
import { KeyList } from './keys/keyList.tsx'
import { useBenchKeys } from './keys/useBenchKeys.ts'
import { Mishap } from './mishap.tsx'
import { NoticeList } from './noticeList.tsx'
import { titleOf } from './places.ts'
import { SCREENS } from './screens.ts'
import { SheetDialog } from './sheetDialog.tsx'
import { Strips } from './strips.tsx'
import { WhereBar } from './whereBar.tsx'
import './bench.css'

/** A new place begins at its top, and a reader of the screen is told where that is. */
const useArrival = (path: string) => {
  const main = useRef<HTMLElement>(null)
  const last = useRef(path)
  useEffect(() => {
    if (last.current === path) return
    last.current = path
    scrollTo(0, 0)
    main.current?.focus({ preventScroll: true })
  }, [path])
  return main
}

/** The whole page: where we are, and what is shown there. */
export const Bench = () => {
  const place = useCell(here)
  useCell(documents)
  useCell(revisionsSeen)
  const path = pathOf(place)
  const main = useArrival(path)
  const [keysShown, setKeysShown] = useState(false)
  const showKeys = useCallback(() => setKeysShown(true), [])
  useBenchKeys(showKeys)
  const title = titleOf(place, headOfEither)
  useEffect(() => {
    document.title = `${title} · Tinwright`
  }, [title])
  // The table ties every place to its own screen; the compiler cannot follow one key through it.
  const Screen = SCREENS[place.at] as ComponentType<{ readonly place: Place }>
  return (
    <>
      <a className="skip" href="#work">
        Skip to the work
      </a>
      <header className="bench-top">
        <Header place={place} showKeys={showKeys} />
        <WhereBar place={place} />
        <Strips place={place} />
      </header>
      <Guide />
      <main id="work" ref={main} tabIndex={-1} aria-label={title}>
        <Mishap at={path}>
          <Suspense
            fallback={
              <p className="laying-out" role="status">
                Laying it out …
              </p>
            }
          >
            <Screen place={place} />
          </Suspense>
        </Mishap>
      </main>
      <NoticeList />
      <FootBar place={place} />
      <SheetDialog title="Keys" open={keysShown} onClose={() => setKeysShown(false)}>
        <KeyList />
      </SheetDialog>
    </>
  )
}
