import { photoPath } from '#wire/routes.ts'
import { useCell } from '../cell/useCell.ts'
import { documents } from '../workshop/workshop.ts'

/** Photos of a burn, as the workshop has them. */
export const Photos = ({ trial }: { readonly trial: string }) => {
  const all = useCell(documents).filter(
    ({ kind, aboutDocument }) => kind === 'photo' && aboutDocument === trial,
  )
  if (all.length === 0) return <p className="muted">No photos yet: the phone at the stove takes them.</p>
  return (
    <ul className="trial-photos">
      {all.map(({ id, name }) => (
        <li key={id}>
          <a href={photoPath(id)}>
            <img src={photoPath(id)} alt={name} loading="lazy" />
          </a>
          <span className="small">{name}</span>
        </li>
      ))}
    </ul>
  )
}
