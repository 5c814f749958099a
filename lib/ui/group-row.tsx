/** A row of a `SheetTable` that heads the rows below it, over all columns. */
export function GroupRow({ label, columns }: { label: string; columns: number }) {
  return (
    <tr>
      <th scope="colgroup" colSpan={columns} className="pt-5! text-small print:pt-2! font-normal! text-ink-2">
        {label}
      </th>
    </tr>
  )
}
