/**
 * The field that holds more than may be sent: the file, or the pasted text; null when neither does. A text counts in
 * bytes, as it travels: a letter of another script is up to three of them.
 */
export function tooLargeAt(form: FormData, mostBytes: number): 'file' | 'text' | null {
  return (['file', 'text'] as const).find((name) => new Blob([form.get(name) ?? '']).size > mostBytes) ?? null
}
