import { type ComponentType, type LazyExoticComponent, lazy } from 'react'
import type { Place } from '../routes/routes.ts'

type Screen<P extends Place['at']> = LazyExoticComponent<
  ComponentType<{ readonly place: Extract<Place, { readonly at: P }> }>
>

/** What each place shows, loaded when somebody first goes there. */
export const SCREENS: { readonly [P in Place['at']]: Screen<P> } = {
  home: lazy(() => import('../home/home.tsx').then(({ Home }) => ({ default: Home }))),
  stove: lazy(() => import('../stove/stoveScreen.tsx').then(({ StoveScreen }) => ({ default: StoveScreen }))),
  space: lazy(() => import('../space/spaceScreen.tsx').then(({ SpaceScreen }) => ({ default: SpaceScreen }))),
  family: lazy(() => import('../family/family.tsx').then(({ Family }) => ({ default: Family }))),
  plan: lazy(() => import('../plan/planScreen.tsx').then(({ PlanScreen }) => ({ default: PlanScreen }))),
  trials: lazy(() => import('../trials/trials.tsx').then(({ Trials }) => ({ default: Trials }))),
  beside: lazy(() => import('../beside/beside.tsx').then(({ Beside }) => ({ default: Beside }))),
  shelf: lazy(() => import('../shelf/shelfScreen.tsx').then(({ ShelfScreen }) => ({ default: ShelfScreen }))),
  start: lazy(() =>
    import('../startStove/startStove.tsx').then(({ StartStove }) => ({ default: StartStove })),
  ),
  trial: lazy(() =>
    import('../trials/trialScreen.tsx').then(({ TrialScreen }) => ({ default: TrialScreen })),
  ),
  burn: lazy(() => import('../atStove/atStove.tsx').then(({ AtStove }) => ({ default: AtStove }))),
  help: lazy(() => import('../help/help.tsx').then(({ Help }) => ({ default: Help }))),
  workshop: lazy(() =>
    import('../workshop/screen/workshopScreen.tsx').then(({ WorkshopScreen }) => ({
      default: WorkshopScreen,
    })),
  ),
  nowhere: lazy(() => import('../home/nowhere.tsx').then(({ Nowhere }) => ({ default: Nowhere }))),
}
