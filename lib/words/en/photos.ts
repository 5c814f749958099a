/** Photos of a dough, at the desk. */
export const photos = {
  title: 'Photos',
  none: 'No photo was taken of it.',
  take: 'Add a photo',
  caution:
    'Show bread and dough, and no people: what local rules say of pictures of staff and customers holds here too. Everybody here sees it, so show nothing that tells which dough this is. It stays as it is kept.',
  file: 'Photo',
  fileHint: 'JPEG, PNG or WebP. It is kept without where it was taken and by which device.',
  shows: 'What it shows',
  whole: 'the whole batch',
  piece: 'piece {number}',
  keep: 'Keep the photo',
  nothing: 'Choose a photo first.',
  sending: 'Sending it: part {done} of {count}',
  kept: 'The photo is kept.',
  notAnswered:
    'The book did not answer. The photo is still chosen here; keep it again, and it goes on from where it was.',
  alt: 'Photo {number} of batch {code}',
  altOfPiece: 'Photo {number} of batch {code}, piece {piece}',
} as const
