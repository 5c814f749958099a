import ts from 'typescript'

/** A file of ours as it is written. */
export type Source = { file: string; text: string }
/** A place where a text is made of texts. */
export type TextFault = { file: string; line: number; what: string; code: string }

const saying = new Set(['say', 'fill'])
const filling = new Set([...saying, 'sayName'])
const wordHolders = new Set(['words', 'text'])

/**
 * Where code makes a text of texts: a sentence as a fact of another one, texts concatenated or joined, letters of one
 * changed. A function speaks when what it returns does; those that a file gives out are known by name in all others.
 */
export function textFaults(sources: readonly Source[]): TextFault[] {
  const parsed = sources.map(({ file, text }) => ({
    file,
    tree: ts.createSourceFile(
      file,
      text,
      ts.ScriptTarget.Latest,
      true,
      file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
    ),
  }))
  const speakers = speakersIn(parsed.map(({ tree }) => tree))
  return parsed.flatMap(({ file, tree }) => faultsIn(file, tree, speakers.get(tree)!))
}

/** For each file the names of the functions, its own and those that others give out, whose answer is a sentence. */
function speakersIn(trees: readonly ts.SourceFile[]): Map<ts.SourceFile, Set<string>> {
  const functions = trees.flatMap((tree) => {
    const found: { tree: ts.SourceFile; name: string; isShared: boolean; returned: ts.Expression[] }[] = []
    each(tree, (node) => {
      if (ts.isFunctionDeclaration(node) && node.name && node.body)
        found.push({
          tree,
          name: node.name.text,
          isShared: ts.getModifiers(node)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false,
          returned: returnedBy(node.body),
        })
      if (
        ts.isVariableDeclaration(node) &&
        ts.isIdentifier(node.name) &&
        node.initializer &&
        ts.isArrowFunction(node.initializer)
      )
        found.push({ tree, name: node.name.text, isShared: false, returned: returnedBy(node.initializer.body) })
    })
    return found
  })
  const speakers = new Map(trees.map((tree) => [tree, new Set(saying)]))
  for (let isNew = true; isNew; ) {
    isNew = false
    for (const { tree, name, isShared, returned } of functions) {
      if (
        speakers.get(tree)!.has(name) ||
        !returned.some((expression) =>
          isText(
            expression,
            (call) => speakers.get(tree)!.has(call),
            () => false,
          ),
        )
      )
        continue
      isNew = true
      for (const [other, names] of speakers) if (isShared || other === tree) names.add(name)
    }
  }
  return speakers
}

function returnedBy(body: ts.ConciseBody): ts.Expression[] {
  if (!ts.isBlock(body)) return [body]
  const found: ts.Expression[] = []
  const look = (node: ts.Node): void => {
    if (ts.isReturnStatement(node) && node.expression) found.push(node.expression)
    if (!ts.isFunctionLike(node)) ts.forEachChild(node, look)
  }
  look(body)
  return found
}

function faultsIn(file: string, tree: ts.SourceFile, speakers: ReadonlySet<string>): TextFault[] {
  const faults: TextFault[] = []
  const constants = new Map<string, ts.Expression>()
  const holders = new Set(wordHolders)
  each(tree, (node) => {
    if (ts.isVariableDeclaration(node) && ts.isIdentifier(node.name) && node.initializer)
      constants.set(node.name.text, node.initializer)
    if (ts.isVariableDeclaration(node) && node.initializer && isOfWords(node.initializer, holders))
      for (const name of namesOf(node.name)) holders.add(name)
    if (
      ts.isBindingElement(node) &&
      ts.isObjectBindingPattern(node.name) &&
      holders.has((node.propertyName ?? node.name).getText())
    )
      for (const name of namesOf(node.name)) holders.add(name)
    if (
      ts.isBindingElement(node) &&
      ts.isIdentifier(node.name) &&
      node.propertyName &&
      holders.has(node.propertyName.getText())
    )
      holders.add(node.name.text)
  })
  const speaks = (expression: ts.Expression, words: boolean): boolean =>
    isText(
      expression,
      (call) => speakers.has(call),
      (leaf) =>
        (ts.isIdentifier(leaf) &&
          constants.has(leaf.text) &&
          isText(
            constants.get(leaf.text)!,
            (call) => speakers.has(call),
            () => false,
          )) ||
        (words && isOfWords(leaf, holders) && !ts.isIdentifier(leaf)),
    )
  const fault = (node: ts.Node, what: string) =>
    faults.push({
      file,
      line: tree.getLineAndCharacterOfPosition(node.getStart()).line + 1,
      what,
      code: node.getText().replace(/\s+/g, ' '),
    })
  each(tree, (node) => {
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression) && filling.has(node.expression.text)) {
      const [, , facts] = node.arguments
      if (facts && ts.isObjectLiteralExpression(facts))
        for (const property of facts.properties) {
          const value = ts.isPropertyAssignment(property)
            ? property.initializer
            : ts.isShorthandPropertyAssignment(property)
              ? property.name
              : undefined
          if (value && speaks(value, false)) fault(property, 'a sentence as a fact')
        }
    }
    if (ts.isTemplateExpression(node) && node.templateSpans.some(({ expression }) => speaks(expression, true)))
      fault(node, 'texts concatenated')
    if (
      ts.isBinaryExpression(node) &&
      node.operatorToken.kind === ts.SyntaxKind.PlusToken &&
      (speaks(node.left, true) || speaks(node.right, true))
    )
      fault(node, 'texts concatenated')
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { name, expression } = node.expression
      if (name.text === 'join' && holdsText(expression)) fault(node, 'texts joined')
      if (/^to(Locale)?(Lower|Upper)Case$/.test(name.text) && speaks(expression, true)) fault(node, 'letters changed')
      if (/^charAt$/.test(name.text) && speaks(expression, true)) fault(node, 'letters changed')
    }
  })
  return faults

  /** Of a list that is joined: a text anywhere in how it is made counts. */
  function holdsText(expression: ts.Expression): boolean {
    const made = ts.isIdentifier(expression) ? (constants.get(expression.text) ?? expression) : expression
    let found = false
    each(made, (node) => {
      if (ts.isExpression(node) && speaks(node, true)) found = true
    })
    return found
  }
}

/** Whether an expression's value may be a text: what is called, and what a leaf is, say the two functions. */
function isText(
  expression: ts.Expression,
  isSpeaker: (name: string) => boolean,
  isLeaf: (leaf: ts.Expression) => boolean,
): boolean {
  const inner = (each: ts.Expression) => isText(each, isSpeaker, isLeaf)
  if (ts.isParenthesizedExpression(expression) || ts.isAsExpression(expression) || ts.isNonNullExpression(expression))
    return inner(expression.expression)
  if (ts.isConditionalExpression(expression)) return inner(expression.whenTrue) || inner(expression.whenFalse)
  if (ts.isBinaryExpression(expression))
    return isChoice(expression) && (inner(expression.left) || inner(expression.right))
  if (ts.isCallExpression(expression))
    return ts.isIdentifier(expression.expression) && isSpeaker(expression.expression.text)
  return isLeaf(expression)
}

function isChoice({ operatorToken: { kind } }: ts.BinaryExpression): boolean {
  return (
    kind === ts.SyntaxKind.QuestionQuestionToken ||
    kind === ts.SyntaxKind.BarBarToken ||
    kind === ts.SyntaxKind.AmpersandAmpersandToken
  )
}

/** Whether it is read out of the words: `wordsIn(…)`, or a path that begins with something that holds words. */
function isOfWords(expression: ts.Expression, holders: ReadonlySet<string>): boolean {
  if (ts.isCallExpression(expression))
    return ts.isIdentifier(expression.expression) && expression.expression.text === 'wordsIn'
  if (ts.isPropertyAccessExpression(expression) || ts.isElementAccessExpression(expression))
    return isOfWords(expression.expression, holders)
  return ts.isIdentifier(expression) && holders.has(expression.text)
}

function namesOf(name: ts.BindingName): string[] {
  if (ts.isIdentifier(name)) return [name.text]
  return name.elements.flatMap((element) => (ts.isBindingElement(element) ? namesOf(element.name) : []))
}

function each(node: ts.Node, look: (node: ts.Node) => void): void {
  look(node)
  ts.forEachChild(node, (child) => each(child, look))
}
