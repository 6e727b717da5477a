package org.meadowmark.core.change.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.meadowmark.core.change.SeasonSurvey;
import org.meadowmark.core.change.match.ChangeClass;
import org.meadowmark.core.change.match.ScarChange;
import org.meadowmark.core.change.match.ScarLink;
import org.meadowmark.core.change.match.ScarMatcher;
import org.meadowmark.core.change.match.SeasonMatch;
import org.meadowmark.core.model.MetricSurvey;
import org.meadowmark.core.model.Progress;
import org.meadowmark.core.model.Scar;

/**
 * Strings the matches of surveys that follow each other into one history for each scar.
 *
 * <p>A scar continues the history of the earlier scar that it shares most metres with, if that one
 * shares most metres with it too. Of a scar that splits, the largest part continues and the others
 * begin histories of their own; of scars that merge, the largest continues and the others end. What
 * is new in a survey is also held against scars that were last seen in a survey before the one
 * before: so a survey that did not look, or did not see, does not cut a history in two.
 *
 * <p>Time is that of matching each survey with the next, and with the scars that went out of sight
 * before.
 */
public final class ScarHistories {
  private final List<SeasonSurvey> surveys;
  private final List<SeasonMatch> matches;
  private final ScarMatcher matcher;
  private final List<Open> histories = new ArrayList<>();

  /** A history that is being written. */
  private static final class Open {
    final String id;
    final Optional<String> splitFrom;
    final List<Sighting> sightings = new ArrayList<>();
    Optional<String> mergedInto = Optional.empty();
    int lastSurvey;
    String lastScar = "";

    Open(String id, Optional<String> splitFrom) {
      this.id = id;
      this.splitFrom = splitFrom;
    }

    void see(int survey, Sighting sighting) {
      sightings.add(sighting);
      lastSurvey = survey;
      lastScar = sighting.scarId().orElseThrow();
    }
  }

  private ScarHistories(
      List<SeasonSurvey> surveys, List<SeasonMatch> matches, ScarMatcher matcher) {
    this.surveys = surveys;
    this.matches = matches;
    this.matcher = matcher;
  }

  /**
   * Writes the histories.
   *
   * @param surveys two or more surveys in order of date
   * @param matches each of them matched with the next
   * @param matcher matches what went out of sight with what appears
   * @return in order of the first survey and then the id of the scar there
   * @throws IllegalArgumentException if the matches are not those of the surveys
   */
  public static List<ScarHistory> trace(
      List<SeasonSurvey> surveys, List<SeasonMatch> matches, ScarMatcher matcher) {
    if (surveys.size() < 2 || matches.size() != surveys.size() - 1) {
      throw new IllegalArgumentException("each of two or more surveys is matched with the next");
    }
    for (int i = 0; i < matches.size(); i++) {
      if (!matches.get(i).earlierDate().equals(surveys.get(i).date())
          || !matches.get(i).laterDate().equals(surveys.get(i + 1).date())) {
        throw new IllegalArgumentException("a match of other surveys: " + matches.get(i));
      }
    }
    return new ScarHistories(List.copyOf(surveys), List.copyOf(matches), matcher).run();
  }

  private List<ScarHistory> run() {
    Map<String, Scar> scars = scars(0);
    Map<String, Open> open = new LinkedHashMap<>();
    for (ScarChange scar : matches.get(0).earlier()) {
      Sighting first = seen(0, scar, scars.get(scar.id()), Optional.empty());
      open.put(scar.id(), begin(0, first, Optional.empty()));
    }
    for (int survey = 1; survey < surveys.size(); survey++) {
      open = next(survey, open);
    }
    return histories.stream()
        .map(h -> new ScarHistory(h.id, h.sightings, h.splitFrom, h.mergedInto))
        .toList();
  }

  /** Goes on to a survey: takes the histories of the scars before, gives those of its own. */
  private Map<String, Open> next(int survey, Map<String, Open> before) {
    SeasonMatch match = matches.get(survey - 1);
    Map<String, Scar> scars = scars(survey);
    Map<String, ScarLink> predecessors = largest(match.links(), false);
    Map<String, ScarLink> successors = largest(match.links(), true);
    Set<String> appeared = new LinkedHashSet<>();
    Map<String, Open> continued = new HashMap<>();
    for (ScarChange scar : match.later()) {
      ScarLink from = predecessors.get(scar.id());
      if (from == null) {
        appeared.add(scar.id());
      } else if (successors.get(from.earlierId()).laterId().equals(scar.id())) {
        continued.put(scar.id(), before.get(from.earlierId()));
      }
    }
    continued.putAll(reappeared(survey, appeared));
    Map<String, Open> now = new LinkedHashMap<>();
    for (ScarChange scar : match.later()) {
      Sighting sighting = seen(survey, scar, scars.get(scar.id()), Optional.of(scar.change()));
      Open history = continued.get(scar.id());
      if (history == null) {
        ScarLink from = predecessors.get(scar.id());
        history =
            begin(
                survey,
                sighting,
                Optional.ofNullable(from).map(link -> before.get(link.earlierId()).id));
      } else {
        history.see(survey, sighting);
      }
      now.put(scar.id(), history);
    }
    for (ScarChange scar : match.earlier()) {
      Open history = before.get(scar.id());
      if (history.lastSurvey == survey) {
        continue;
      }
      ScarLink into = successors.get(scar.id());
      if (into != null) {
        history.mergedInto = Optional.of(now.get(into.laterId()).id);
      } else {
        history.sightings.add(unseen(survey, scar));
      }
    }
    return now;
  }

  /** Histories that went out of sight before the survey before, and go on with new scars. */
  private Map<String, Open> reappeared(int survey, Set<String> newScars) {
    Map<Integer, Map<String, Open>> asleep = new TreeMap<>(Comparator.reverseOrder());
    for (Open history : histories) {
      if (history.mergedInto.isEmpty() && history.lastSurvey < survey - 1) {
        asleep
            .computeIfAbsent(history.lastSurvey, last -> new LinkedHashMap<>())
            .put(history.lastScar, history);
      }
    }
    Map<String, Open> awake = new HashMap<>();
    Set<String> left = new LinkedHashSet<>(newScars);
    asleep.forEach(
        (last, byScar) -> {
          SeasonMatch match =
              matcher.match(
                  only(surveys.get(last), byScar.keySet()),
                  only(surveys.get(survey), left),
                  Progress.NONE);
          Map<String, ScarLink> predecessors = largest(match.links(), false);
          Map<String, ScarLink> successors = largest(match.links(), true);
          for (ScarChange scar : match.earlier()) {
            ScarLink to = successors.get(scar.id());
            if (to != null && predecessors.get(to.laterId()).earlierId().equals(scar.id())) {
              awake.put(to.laterId(), byScar.get(scar.id()));
              left.remove(to.laterId());
            } else {
              byScar.get(scar.id()).sightings.add(unseen(survey, scar));
            }
          }
        });
    return awake;
  }

  private Sighting unseen(int survey, ScarChange scar) {
    return Sighting.without(
        surveys.get(survey).date(),
        scar.change() == ChangeClass.NOT_COMPARABLE
            ? Sighting.State.NOT_COMPARABLE
            : Sighting.State.NOT_SEEN);
  }

  private Open begin(int survey, Sighting sighting, Optional<String> splitFrom) {
    LocalDate date = surveys.get(survey).date();
    Open history = new Open(date + ":" + sighting.scarId().orElseThrow(), splitFrom);
    history.see(survey, sighting);
    histories.add(history);
    return history;
  }

  private Sighting seen(int survey, ScarChange change, Scar scar, Optional<ChangeClass> since) {
    return new Sighting(
        surveys.get(survey).date(),
        Sighting.State.SEEN,
        Optional.of(change.id()),
        OptionalDouble.of(change.lengthMetres()),
        scar.isLine() ? OptionalDouble.of(scar.widthMetres()) : OptionalDouble.empty(),
        since);
  }

  /** The telling link of most metres of each scar of one side; of equal ones the first. */
  private static Map<String, ScarLink> largest(List<ScarLink> links, boolean ofEarlier) {
    Map<String, ScarLink> largest = new HashMap<>();
    for (ScarLink link : links) {
      if (link.telling()) {
        largest.merge(
            ofEarlier ? link.earlierId() : link.laterId(),
            link,
            (one, other) -> metres(other, ofEarlier) > metres(one, ofEarlier) ? other : one);
      }
    }
    return largest;
  }

  private static double metres(ScarLink link, boolean ofEarlier) {
    return ofEarlier ? link.earlierMetres() : link.laterMetres();
  }

  private Map<String, Scar> scars(int survey) {
    Map<String, Scar> scars = new HashMap<>();
    surveys.get(survey).survey().scars().forEach(scar -> scars.put(scar.id(), scar));
    return scars;
  }

  private static SeasonSurvey only(SeasonSurvey season, Set<String> ids) {
    MetricSurvey survey = season.survey();
    return new SeasonSurvey(
        season.date(),
        new MetricSurvey(
            survey.gridLabel(),
            survey.gridWkt(),
            survey.scars().stream().filter(scar -> ids.contains(scar.id())).toList(),
            survey.beds(),
            survey.channels(),
            survey.managementAreas(),
            survey.surveyedArea(),
            survey.barriers(),
            survey.depth(),
            survey.scale()),
        season.accuracy());
  }
}
