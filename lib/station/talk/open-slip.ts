import { openDough } from '../keep/tablet'

/** Behind the address of a slip: the dough's id, and the number of its piece. */
const ofSlip = /^#([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})\.([1-9]\d{0,3})$/

/** The dough and the piece that a scanned address names; null where it names none. */
export function readSlip(hash: string): { batchId: string; piece: number } | null {
  const [, batchId, piece] = ofSlip.exec(hash) ?? []
  return batchId === undefined ? null : { batchId, piece: Number(piece) }
}

/** Opens the piece whose slip the camera read, now and whenever it reads one. */
export function openSlips(): void {
  const open = () => {
    const slip = readSlip(window.location.hash)
    if (!slip) return
    // Once: a reload opens what is open by then.
    window.history.replaceState(null, '', window.location.pathname)
    void openDough(slip.batchId, { piece: slip.piece })
  }
  open()
  window.addEventListener('hashchange', open)
}
