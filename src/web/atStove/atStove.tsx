import type { Place } from '../routes/routes.ts'

export const AtStove = (_: { readonly place: Extract<Place, { readonly at: 'burn' }> }) => <h1>AtStove</h1>
