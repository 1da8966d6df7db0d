package org.lensward.eye;

/** How far the pupil opens when dilated, in the three classes of Narendran et al., Eye 2009;23:31. */
public enum PupilSize {
    LARGE,
    MEDIUM,
    SMALL
}
