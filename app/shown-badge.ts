import 'server-only'
import { qrCode } from '@/lib/kitchen/stations/qr-code'
import { squaresToText } from '@/lib/ui/squares-text'

/** What `FormBadge` shows of a badge that was made: its picture, and never its text. */
export function shownBadge({ code }: { code: string }): { scan: string } {
  return { scan: squaresToText(qrCode(code)) }
}
