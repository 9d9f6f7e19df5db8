import type { Place } from '../routes/routes.ts'

export const Family = (_: { readonly place: Extract<Place, { readonly at: 'family' }> }) => <h1>Family</h1>
