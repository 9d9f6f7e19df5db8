import type { Place } from '../routes/routes.ts'

export const ShelfScreen = (_: { readonly place: Extract<Place, { readonly at: 'shelf' }> }) => (
  <h1>ShelfScreen</h1>
)
