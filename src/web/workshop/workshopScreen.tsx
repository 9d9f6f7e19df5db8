import type { Place } from '../routes/routes.ts'

export const WorkshopScreen = (_: { readonly place: Extract<Place, { readonly at: 'workshop' }> }) => (
  <h1>WorkshopScreen</h1>
)
