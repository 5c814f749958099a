import { useEffect, useState, type RefObject } from 'react'

/** Why there is no picture. */
export type CameraFault = 'none' | 'refused' | 'busy'

const wanted: MediaStreamConstraints = {
  audio: false,
  video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } },
}

/**
 * Shows what the camera sees in a video, and lets the camera go as soon as the video is off the screen or the page is
 * hidden; seen again, it opens anew.
 * @param isWanted whether anything would be done with the picture
 */
export function useCamera(
  video: RefObject<HTMLVideoElement | null>,
  isWanted: boolean,
): {
  isOpen: boolean
  fault: CameraFault | null
  again(): void
} {
  const [state, setState] = useState<{ isOpen: boolean; fault: CameraFault | null }>({ isOpen: false, fault: null })
  const [tried, setTried] = useState(0)
  useEffect(() => {
    if (!isWanted) return
    const shown = video.current
    let stream: MediaStream | null = null
    // Whoever asks the browser may be gone when it answers: only the latest asking counts.
    let asked = 0
    const letGo = () => {
      asked++
      for (const track of stream?.getTracks() ?? []) track.stop()
      stream = null
      if (shown) shown.srcObject = null
    }
    const fail = (fault: CameraFault) => {
      letGo()
      setState({ isOpen: false, fault })
    }
    const open = async () => {
      const mine = ++asked
      try {
        // Not there at all on an address that browsers do not trust.
        if (!('mediaDevices' in navigator)) throw new DOMException('', 'NotFoundError')
        const given = await navigator.mediaDevices.getUserMedia(wanted)
        if (mine !== asked) {
          for (const track of given.getTracks()) track.stop()
          return
        }
        stream = given
        for (const track of given.getTracks()) track.addEventListener('ended', () => fail('busy'))
        if (!shown) return
        shown.srcObject = given
        await shown.play()
        if (mine === asked) setState({ isOpen: true, fault: null })
      } catch (error) {
        if (mine === asked) fail(faultOf(error))
      }
    }
    const look = () => {
      if (document.visibilityState === 'hidden') {
        letGo()
        setState({ isOpen: false, fault: null })
      } else if (!stream) void open()
    }
    look()
    document.addEventListener('visibilitychange', look)
    return () => {
      document.removeEventListener('visibilitychange', look)
      letGo()
    }
  }, [video, tried, isWanted])
  return {
    ...state,
    again() {
      setState({ isOpen: false, fault: null })
      setTried((times) => times + 1)
    },
  }
}

function faultOf(error: unknown): CameraFault {
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'refused'
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'none'
    default:
      return 'busy'
  }
}
