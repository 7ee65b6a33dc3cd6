/**
 * Long rows of points on a drawing of our own, of which only what the screen can show is drawn.
 *
 * <p>Here: points and the lines that belong to them, the part of them that is in view, painting
 * them on a canvas or as SVG, zoom, pan, cursor and keys. Not here: what the points mean (rooms
 * trend and compare). Read {@link datumpeg.desktop.chart.ChartPoints} first.
 */
@NullMarked
package datumpeg.desktop.chart;

import org.jspecify.annotations.NullMarked;
