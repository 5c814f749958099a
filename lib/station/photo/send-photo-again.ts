import { tablet } from '../keep/tablet'

/** Lets a photo that the book refused wait to be sent once more: what it was refused for may be over. */
export async function sendPhotoAgain(id: string): Promise<void> {
  await tablet.photos.update(id, { state: 'waiting', words: null })
}
