/**
 * The drawings of a document, as SVG text (W3C Scalable Vector Graphics 1.1, second edition, 2011).
 *
 * <p>Plans lie as the building does: end 1 on the left, end n on the right, side A at the bottom,
 * side B at the top. One drawing unit is a quarter of a millimetre on paper. Shapes, line styles
 * and words carry the meaning, never colour: everything is black on white. Styles stand on the
 * elements themselves, so that a drawing keeps its look outside the page.
 *
 * <p>Here: drawings of findings and what they are made of. Not here: the text around them. Read
 * {@link datumpeg.analysis.report.drawing.Sketch} first, then {@link
 * datumpeg.analysis.report.drawing.PlanDrawing}.
 */
@NullMarked
package datumpeg.analysis.report.drawing;

import org.jspecify.annotations.NullMarked;
