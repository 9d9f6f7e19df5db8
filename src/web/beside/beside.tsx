import type { Place } from '../routes/routes.ts'

export const Beside = (_: { readonly place: Extract<Place, { readonly at: 'beside' }> }) => <h1>Beside</h1>
