import type { Place } from '../routes/routes.ts'

export const StartStove = (_: { readonly place: Extract<Place, { readonly at: 'start' }> }) => (
  <h1>StartStove</h1>
)
