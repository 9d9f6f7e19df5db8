import type { Place } from '../routes/routes.ts'

export const PlanScreen = (_: { readonly place: Extract<Place, { readonly at: 'plan' }> }) => (
  <h1>PlanScreen</h1>
)
