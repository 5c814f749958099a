import { useState } from 'react'
import { photoKinds } from '../../kitchen/photos/photo-limits.input'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationPhotos as words } from '../../words/en/station-photos'
import type { KeptBy } from '../keep/keep-entry'
import { forget, goOn, type Kept } from '../keep/tablet'
import { keepPhoto } from '../photo/keep-photo'
import { readyPhoto, type ReadyPhoto } from '../photo/ready-photo'
import { sendOutbox } from '../talk/send-outbox'
import { Tap } from '../ui/tap'

/** Takes a photo of a dough, of a piece or of a lot's label. The camera asks whether it is good, so it is kept at once: a page in the back may be gone. */
export function PhotoScreen({ of, by }: { of: Kept['photographing']; by: KeptBy }) {
  const [isKeeping, setKeeping] = useState(false)
  const [error, setError] = useState<string | null>(null)
  const keep = async (file: Blob) => {
    setKeeping(true)
    setError(null)
    const fault = await tryToKeep(file)
    setKeeping(false)
    setError(fault)
    if (fault !== null) return
    void sendOutbox()
    await goOn('photographing', of, null)
  }
  const tryToKeep = async (file: Blob): Promise<string | null> => {
    let ready: ReadyPhoto
    try {
      ready = await readyPhoto(file)
    } catch {
      return words.unreadable
    }
    try {
      await keepPhoto({ of, ready, by })
      return null
    } catch {
      return words.notKept
    }
  }
  const { code, piece, label } = of
  const title = label
    ? say(words.ofLabel, 'en', { code: label.code, ingredient: label.ingredient })
    : piece === null
      ? say(words.ofDough, 'en', { code })
      : say(words.ofPiece, 'en', { code, piece })
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{title}</h1>
        <Tap look="quiet" onTap={() => void forget('photographing')}>
          {station.list.back}
        </Tap>
      </div>
      <p>{label ? words.labelCaution : words.caution}</p>
      <p className="note">{words.atOnce}</p>
      <label className="tap tap-main camera" aria-disabled={isKeeping}>
        {words.take}
        <input
          type="file"
          accept={photoKinds}
          capture="environment"
          disabled={isKeeping}
          onChange={({ target }) => {
            const file = target.files?.[0]
            // The same file again is another choice.
            if (file) void keep(file).finally(() => (target.value = ''))
          }}
        />
      </label>
      <p role="status">{isKeeping ? words.keeping : null}</p>
      <p role="alert" className="fault">
        {error}
      </p>
    </div>
  )
}
