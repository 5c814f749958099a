import { useCallback, useState } from 'react'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationPhotos as words } from '../../words/en/station-photos'
import type { TabletPhoto } from '../photo/tablet-photo'
import { shownTime } from '../ui/figures'

type PhotosProps = { photos: readonly TabletPhoto[]; locale: string; timeZone: string }

/** The photos that were taken here of a dough, or of one of its pieces. */
export function PhotosOf({
  batchId,
  piece,
  photos,
  ...shown
}: PhotosProps & { batchId: string; piece: number | null }) {
  const own = photos.filter(({ said }) => said.batchId === batchId && (piece === null || said.piece === piece))
  if (own.length === 0) return null
  return (
    <section>
      <h2>{words.here}</h2>
      <ul className="rows">
        {own.toReversed().map((photo) => (
          <li key={photo.id} className="lying">
            <PhotoLine photo={photo} isTheirs {...shown} />
          </li>
        ))}
      </ul>
    </section>
  )
}

/**
 * One photo, small, with whose it is and where it stands.
 * @param isTheirs whoever is there took it: of which lot a label is would tell others what went into a dough
 */
export function PhotoLine({
  photo,
  isTheirs,
  locale,
  timeZone,
}: Omit<PhotosProps, 'photos'> & { photo: TabletPhoto; isTheirs: boolean }) {
  const { said, state, personName } = photo
  const name = nameOf(photo, isTheirs)
  return (
    <div className="photo">
      {(isTheirs || !said.label) && <SmallPicture key={photo.id} bytes={photo.small} name={name} />}
      <div>
        <p>{name}</p>
        <p>
          <b>{station.states[state]}</b>
        </p>
        {photo.words !== null && <p>{photo.words}</p>}
        <p>{say(station.list.by, 'en', { name: personName, at: shownTime(said.takenAt, { locale, timeZone }) })}</p>
      </div>
    </div>
  )
}

function nameOf({ said, code }: TabletPhoto, isTheirs: boolean): string {
  if (said.label) return isTheirs ? say(words.rowOfLabel, 'en', { code }) : words.rowOfAnyLabel
  return said.piece === null ? say(words.row, 'en', { code }) : say(words.rowOfPiece, 'en', { code, piece: said.piece })
}

function SmallPicture({ bytes, name }: { bytes: Uint8Array<ArrayBuffer>; name: string }) {
  // What is read anew from the disk is the same picture.
  const [picture] = useState(() => new Blob([bytes], { type: 'image/jpeg' }))
  const show = useCallback(
    (image: HTMLImageElement) => {
      const address = URL.createObjectURL(picture)
      image.src = address
      return () => URL.revokeObjectURL(address)
    },
    [picture],
  )
  // eslint-disable-next-line @next/next/no-img-element -- it lies on the tablet, as small as it is shown
  return <img ref={show} className="picture" alt={name} />
}
