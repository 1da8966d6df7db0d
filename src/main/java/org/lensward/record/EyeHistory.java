package org.lensward.record;

import java.util.List;
import org.lensward.eye.EyeSurgery;
import org.lensward.eye.History;
import org.lensward.finding.Finding;

/**
 * What the record tells of one eye's past and its owner's.
 *
 * @param history signs affirmed and denied
 * @param surgery operations the eye has had
 * @param found what was doubtful
 */
record EyeHistory(History history, List<EyeSurgery> surgery, List<Finding> found) {}
