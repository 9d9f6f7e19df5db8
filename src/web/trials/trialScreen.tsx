import type { Place } from '../routes/routes.ts'

export const TrialScreen = (_: { readonly place: Extract<Place, { readonly at: 'trial' }> }) => (
  <h1>TrialScreen</h1>
)
