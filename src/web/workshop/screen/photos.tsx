import { useId, useState } from 'react'
import { photoPath } from '#wire/routes.ts'
import { say } from '../../bench/notices.ts'
import { useCell } from '../../cell/useCell.ts'
import { FileButton } from '../../files/fileButton.tsx'
import { newId } from '../names.ts'
import { documents, headOf, newAct, workshop } from '../workshop.ts'

const nameOf = (file: string): string => file.replace(/\.[a-z0-9]+$/i, '').slice(0, 120) || 'Photo'

/** Keeps photos with a stove or a trial; safe in this browser at once, in the workshop when it answers. */
const attachPhotos = async (aboutDocument: string, files: readonly File[]): Promise<void> => {
  for (const file of files) {
    const photo = { id: newId(), revision: newId(), name: nameOf(file.name), aboutDocument }
    const answer = await workshop.upload('attach', { act: await newAct(), photo }, file).answer
    if (!answer.ok) say(`${file.name} was not kept. ${answer.refusal.sentence}`)
  }
}

/** The photos of the workshop, and a way to add some to a stove. */
export const Photos = () => {
  const all = useCell(documents)
  const photos = all.filter(({ kind }) => kind === 'photo')
  const owners = all.filter(({ kind }) => kind === 'stove' || kind === 'trial')
  const [owner, setOwner] = useState('')
  const select = useId()
  const chosen = owner === '' ? (owners[0]?.id ?? '') : owner
  if (owners.length === 0) return null
  return (
    <section>
      <h2>Photos</h2>
      <div className="row photo-add">
        <div className="photo-of">
          <label htmlFor={select}>Photos of</label>
          <select id={select} value={chosen} onChange={(event) => setOwner(event.target.value)}>
            {owners.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <FileButton
          name="Add photos"
          field="Photos to add"
          accept="image/jpeg,image/png,image/webp"
          multiple
          onFiles={(files) => void attachPhotos(chosen, files)}
        />
      </div>
      {photos.length === 0 ? (
        <p className="muted">None yet.</p>
      ) : (
        <ul className="photos">
          {photos.map((photo) => {
            const of = photo.aboutDocument === null ? null : headOf(photo.aboutDocument)
            const remove = async (): Promise<void> => {
              const { id: document, version } = photo
              await workshop.write('remove', { act: await newAct(), document, version }).answer
            }
            return (
              <li key={photo.id}>
                <a href={photoPath(photo.id)} target="_blank" rel="noreferrer">
                  <img src={photoPath(photo.id)} alt={photo.name} loading="lazy" width={180} height={135} />
                </a>
                <p>
                  {photo.name}
                  {of === null ? null : <span className="muted small"> of {of.name}</span>}
                </p>
                <button
                  type="button"
                  data-weight="quiet"
                  aria-label={`Take away ${photo.name}`}
                  onClick={() => void remove()}
                >
                  Take away
                </button>
              </li>
            )
          })}
        </ul>
      )}
    </section>
  )
}
