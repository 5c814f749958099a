import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'

type Program = { locateFile(): string } | { wasmBinary: ArrayBuffer }

/** Says where the reader's program is, before anything is read: by itself the library would fetch it from elsewhere. */
export async function prepareReader(overrides: Program): Promise<void> {
  await prepareZXingModule({ overrides, fireImmediately: true })
}

/** The texts of all QR codes and Code 128 in a picture, whichever way up. */
export async function readPicture(picture: Pick<ImageData, 'data' | 'width' | 'height'>): Promise<string[]> {
  const found = await readBarcodes(picture as ImageData, { formats: ['QRCode', 'Code128'], maxNumberOfSymbols: 8 })
  return found.filter(({ isValid }) => isValid).map(({ text }) => text)
}
