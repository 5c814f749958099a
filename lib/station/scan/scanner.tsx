import { useEffect, useEffectEvent, useRef, useState } from 'react'
import { stationScan as words } from '../../words/en/station-scan'
import { Tap } from '../ui/tap'
import { codeReader } from './code-reader'
import { useCamera, type CameraFault } from './use-camera'

/** So often a picture is looked at: faster than anybody changes the slip, slow enough for an old tablet. */
const lookMs = 200

type ScannerProps = {
  onCodes(texts: string[]): void
  /** What to do where there is no camera, in place of typing the code. */
  faults?: Record<CameraFault | 'reader', string>
}

/** What the camera sees, and the codes in it, told once for as long as they are the same; or why nothing is seen. */
export function Scanner({ onCodes, faults = words.camera }: ScannerProps) {
  const video = useRef<HTMLVideoElement>(null)
  const [hasReader, setHasReader] = useState(true)
  const { isOpen, fault, again } = useCamera(video, hasReader)
  const tell = useEffectEvent(onCodes)
  useEffect(() => {
    if (!isOpen) return
    let isOver = false
    let timer: ReturnType<typeof setTimeout> | undefined
    const start = async () => {
      const read = await codeReader()
      let told = ''
      const look = async () => {
        const shown = video.current
        // A single picture that could not be read is followed by the next one.
        const texts = shown && shown.readyState >= shown.HAVE_CURRENT_DATA ? await read(shown).catch(() => []) : []
        if (isOver) return
        const seen = JSON.stringify(texts)
        if (texts.length > 0 && seen !== told) tell(texts)
        told = seen
        timer = setTimeout(() => void look(), lookMs)
      }
      if (!isOver) await look()
    }
    start().catch(() => {
      if (!isOver) setHasReader(false)
    })
    return () => {
      isOver = true
      clearTimeout(timer)
    }
  }, [isOpen])
  const told = fault ?? (hasReader ? null : 'reader')
  return (
    <div className="scanner">
      <video ref={video} muted playsInline aria-label={words.picture} hidden={told !== null} />
      <p role="status">{told === null ? (isOpen ? words.hold : words.starting) : null}</p>
      <p role="alert" className="fault">
        {told && faults[told]}
      </p>
      {told && (
        <Tap
          look="plain"
          onTap={() => {
            setHasReader(true)
            again()
          }}
        >
          {words.again}
        </Tap>
      )}
    </div>
  )
}
