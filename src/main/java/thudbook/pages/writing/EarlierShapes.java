package thudbook.pages.writing;

import java.util.LinkedHashMap;
import java.util.Map;
import thudbook.plots.ShapePlot;
import thudbook.predictions.Sound;

/**
 * The shapes that forms are compared with. Each is asked for with every change of a form and seldom
 * becomes another, so the latest few are kept.
 */
final class EarlierShapes {
  private static final int MOST = 16;

  private final Map<Sound, ShapePlot.Earlier> shapes =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Sound, ShapePlot.Earlier> eldest) {
          return size() > MOST;
        }
      };

  /** The shape of a sound. */
  synchronized ShapePlot.Earlier of(Sound sound) {
    return shapes.computeIfAbsent(sound, ShapePlot.Earlier::of);
  }
}
