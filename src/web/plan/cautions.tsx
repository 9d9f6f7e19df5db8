import './cautions.css'
import { MAKING_CAUTIONS } from '#craft/caution.ts'

/** They stand on every screen that says cut, build or burn. */
export const MakingCautions = ({ title = 'Before you cut or burn' }: { readonly title?: string }) => (
  <aside className="making-cautions" aria-label={title}>
    <h2>{title}</h2>
    <ul>
      {MAKING_CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  </aside>
)
