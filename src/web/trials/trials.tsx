import type { Place } from '../routes/routes.ts'

export const Trials = (_: { readonly place: Extract<Place, { readonly at: 'trials' }> }) => <h1>Trials</h1>
