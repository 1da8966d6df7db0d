package org.lensward.board.access;

/** An authentication behind which no person is known: a program with a token of its own, or anybody at this machine. */
interface Program {}
