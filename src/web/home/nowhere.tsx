import { Link } from '../routes/link.tsx'
import type { Place } from '../routes/routes.ts'

export const Nowhere = ({ place }: { readonly place: Extract<Place, { readonly at: 'nowhere' }> }) => (
  <div className="mishap">
    <h1>Nothing here</h1>
    <p>
      The bench has no page {place.path}. An address that was typed has a slip in it, or it belongs to another
      version.
    </p>
    <p>
      <Link to={{ at: 'home' }}>To the stoves</Link>
    </p>
  </div>
)
