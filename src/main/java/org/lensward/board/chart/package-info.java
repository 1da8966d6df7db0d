/** Charts of outcomes as SVG, each with its words and its table, to look at, to print and to hear. */
@NullMarked
package org.lensward.board.chart;

import org.jspecify.annotations.NullMarked;
