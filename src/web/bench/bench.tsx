import { type ComponentType, Suspense } from 'react'
import { useCell } from '../cell/useCell.ts'
import { here } from '../routes/here.ts'
import type { Place } from '../routes/routes.ts'
import { SCREENS } from './screens.ts'

/** The whole page: where we are, and what is shown there. */
export const Bench = () => {
  const place = useCell(here)
  // The table ties every place to its own screen; the compiler cannot follow one key through it.
  const Screen = SCREENS[place.at] as ComponentType<{ readonly place: Place }>
  return (
    <main id="work">
      <Suspense fallback={<p role="status">Laying it out …</p>}>
        <Screen place={place} />
      </Suspense>
    </main>
  )
}
