import type { Place } from '../routes/routes.ts'

export const Help = (_: { readonly place: Extract<Place, { readonly at: 'help' }> }) => <h1>Help</h1>
