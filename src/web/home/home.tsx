import type { Place } from '../routes/routes.ts'

export const Home = (_: { readonly place: Extract<Place, { readonly at: 'home' }> }) => <h1>Home</h1>
