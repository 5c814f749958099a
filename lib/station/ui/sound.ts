/** As high as a kitchen timer, Hz; twice in a row. */
const pitchHz = 1760
const beepsAtS = [0, 0.3]
const beepS = 0.2
const loud = 0.6

let context: AudioContext | null = null
let changed: () => void = () => undefined

/** Makes sound possible: browsers allow it only from a tap on, and anew after each reload. */
function allow(): void {
  try {
    if (!context) {
      context = new AudioContext()
      context.addEventListener('statechange', () => changed())
    }
    if (context.state !== 'running') context.resume().catch(() => undefined)
  } catch {
    // A browser without sound: the page says so, and timers flash.
  }
}

/** Takes the next tap anywhere as leave to make a sound. */
export function listenSound(onChange: () => void): () => void {
  changed = onChange
  window.addEventListener('pointerup', allow, { capture: true })
  window.addEventListener('keydown', allow, { capture: true })
  return () => {
    window.removeEventListener('pointerup', allow, { capture: true })
    window.removeEventListener('keydown', allow, { capture: true })
  }
}

/** Whether the browser lets the page be heard. */
export function readSound(): boolean {
  return context?.state === 'running'
}

/** Sounds once, where it is allowed. */
export function beep(): void {
  if (context?.state !== 'running') return
  for (const at of beepsAtS) {
    const from = context.currentTime + at
    const tone = context.createOscillator()
    const volume = context.createGain()
    tone.frequency.value = pitchHz
    // An edge that is not steep does not crack.
    volume.gain.setValueAtTime(0, from)
    volume.gain.linearRampToValueAtTime(loud, from + 0.01)
    volume.gain.linearRampToValueAtTime(0, from + beepS)
    tone.connect(volume).connect(context.destination)
    tone.start(from)
    tone.stop(from + beepS)
  }
}
