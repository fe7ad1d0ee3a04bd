package loomwright.backfeed.sneak;

import loomwright.operation.FeedStrength;

/** How a load is fed that is not meant to be live; the strongest first, what is pulled in before what is not. */
record Feed(FeedStrength activity, boolean pulledIn) implements Comparable<Feed> {
    @Override
    public int compareTo(Feed other) {
        int byActivity = activity.compareTo(other.activity);
        return byActivity != 0 ? byActivity : Boolean.compare(other.pulledIn, pulledIn);
    }
}
