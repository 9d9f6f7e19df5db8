import type { Place } from '../routes/routes.ts'

export const StoveScreen = (_: { readonly place: Extract<Place, { readonly at: 'stove' }> }) => (
  <h1>StoveScreen</h1>
)
