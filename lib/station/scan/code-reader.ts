/** Reads the texts of all codes that a video shows at this moment. */
export type CodeReader = (video: HTMLVideoElement) => Promise<string[]>

// The Barcode Detection API (W3C, Accelerated Shape Detection), which the types of the page do not know.
type Detector = { detect(source: CanvasImageSource): Promise<{ rawValue: string }[]> }
type DetectorMaker = { new (options: { formats: string[] }): Detector; getSupportedFormats(): Promise<string[]> }

const formats = ['qr_code', 'code_128']
/** A code that fills a third of the picture has enough points at this size, and more only take longer. */
const mostAcross = 1280

/** The browser's own reader, where it has one for both kinds of code; else the one that comes with the page, loaded now. */
export async function codeReader(): Promise<CodeReader> {
  const own = await ownDetector()
  if (!own) return bundled()
  let reader: CodeReader = async (video) => (await own.detect(video)).map(({ rawValue }) => rawValue)
  return async (video) => {
    try {
      return await reader(video)
    } catch {
      // It may be named without being there: on some tablets it is part of what the maker adds.
      reader = await bundled()
      return reader(video)
    }
  }
}

async function ownDetector(): Promise<Detector | null> {
  const { BarcodeDetector: Maker } = globalThis as { BarcodeDetector?: DetectorMaker }
  if (!Maker) return null
  try {
    const known = await Maker.getSupportedFormats()
    return formats.every((format) => known.includes(format)) ? new Maker({ formats }) : null
  } catch {
    return null
  }
}

async function bundled(): Promise<CodeReader> {
  const { bundledReader } = await import('./bundled-reader')
  const read = await bundledReader()
  const canvas = document.createElement('canvas')
  const drawing = canvas.getContext('2d', { willReadFrequently: true })
  if (!drawing) throw new Error('the browser draws no picture')
  return (video) => {
    const scale = Math.min(1, mostAcross / Math.max(video.videoWidth, video.videoHeight))
    canvas.width = Math.round(video.videoWidth * scale)
    canvas.height = Math.round(video.videoHeight * scale)
    drawing.drawImage(video, 0, 0, canvas.width, canvas.height)
    return read(drawing.getImageData(0, 0, canvas.width, canvas.height))
  }
}
