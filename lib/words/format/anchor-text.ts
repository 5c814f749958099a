/** As many letters of a hash as stand on paper: nobody makes another record with the same ones. */
const lettersOnPaper = 16
/** In groups, so that people can compare and type them. */
const groupLength = 4

/** A hash as it stands in the foot of a print. @example anchorText('ab12cd34…') // 'ab12 cd34 …', 16 letters */
export function anchorText(hash: string): string {
  return (hash.slice(0, lettersOnPaper).match(new RegExp(`.{${groupLength}}`, 'g')) ?? []).join(' ')
}
