/** The lens check for people in theatre: one question at a time, then STOP or passed, each unmistakable. */
@NullMarked
package org.lensward.board.check;

import org.jspecify.annotations.NullMarked;
