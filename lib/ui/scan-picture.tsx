export type ScanPictureProps = {
  /** Squares row by row, true where dark. */
  rows: readonly (readonly boolean[])[]
  /** What a camera finds in it. */
  label: string
}

/** Squares of light around a code, which scanners ask for. */
const edge = 4

/** A code for a camera, such as a QR code. */
export function ScanPicture({ rows, label }: ScanPictureProps) {
  const size = rows.length + 2 * edge
  const squares = rows.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x + edge} ${y + edge}h1v1h-1z` : '')))
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${size} ${size}`}
      shapeRendering="crispEdges"
      className="block w-full max-w-margin"
    >
      <rect width={size} height={size} className="fill-scan-ground" />
      <path d={squares.join('')} className="fill-scan-mark" />
    </svg>
  )
}
