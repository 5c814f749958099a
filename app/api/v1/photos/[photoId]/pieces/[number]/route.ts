import { reply, replyRefused } from '@/app/api-answer'
import { currentLanguage } from '@/app/language'
import { notSignedIn } from '@/app/not-signed-in'
import { readBytes } from '@/app/read-bytes'
import { isSameOrigin } from '@/app/same-origin'
import { currentSender } from '@/app/sender'
import { photoPieceBytes, pieceHashHeader } from '@/lib/kitchen/photos/photo-limits.input'
import { sendPhotoPiece } from '@/lib/kitchen/photos/send-photo-piece'

type Params = { params: Promise<{ photoId: string; number: string }> }

/**
 * Takes one piece of a photo that was said before: its bytes as `application/octet-stream`, with their SHA-256 in the header
 * `Evendough-Hash`. All are 256 KiB but the last. The answer names the hash of what came.
 */
export async function PUT(request: Request, { params }: Params): Promise<Response> {
  if (!isSameOrigin(request)) return reply(403, { refusal: 'other-site' })
  if (request.headers.get('content-type') !== 'application/octet-stream') return reply(415, { refusal: 'not-bytes' })
  const language = await currentLanguage()
  const caller = await currentSender(request)
  if (!caller) return replyRefused(notSignedIn, language)
  const bytes = await readBytes(request, photoPieceBytes)
  if (!bytes) return reply(413, { refusal: 'too-large' })
  const { photoId, number } = await params
  const result = await sendPhotoPiece.call(caller, {
    photoId,
    number: /^\d{1,2}$/.test(number) ? Number(number) : null,
    hash: request.headers.get(pieceHashHeader),
    bytes,
  })
  return result.ok ? reply(200, result.value) : replyRefused(result.refusal, language)
}
