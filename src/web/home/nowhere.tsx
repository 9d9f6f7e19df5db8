import type { Place } from '../routes/routes.ts'

export const Nowhere = (_: { readonly place: Extract<Place, { readonly at: 'nowhere' }> }) => <h1>Nowhere</h1>
